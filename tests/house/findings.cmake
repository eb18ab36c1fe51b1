# What every rule shares: finding() notes one, report() ends the rule.
cmake_minimum_required(VERSION 3.25)
set_property(GLOBAL PROPERTY findings 0)
set_property(GLOBAL PROPERTY looked 0)

# Every C++ file of the program, below ROOT; fails when there is none.
function(sources result)
    file(GLOB_RECURSE files RELATIVE "${ROOT}" "${ROOT}/include/*.hpp" "${ROOT}/src/*.hpp" "${ROOT}/src/*.cpp"
         "${ROOT}/src/*.cpp.in")
    set(${result} ${files} PARENT_SCOPE)
endfunction()

function(looked_at things)
    set_property(GLOBAL PROPERTY looked ${things})
endfunction()

function(finding words)
    message(NOTICE "${words}")
    get_property(count GLOBAL PROPERTY findings)
    math(EXPR count "${count} + 1")
    set_property(GLOBAL PROPERTY findings ${count})
endfunction()

function(report)
    get_property(count GLOBAL PROPERTY findings)
    get_property(looked GLOBAL PROPERTY looked)
    message(NOTICE "${looked} looked at, ${count} findings")
    if(count GREATER 0 OR looked EQUAL 0)
        message(FATAL_ERROR "refused")
    endif()
endfunction()
