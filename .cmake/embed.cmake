# Writes OUTPUT, a C++ file holding every file below RATIONS as text, in the order of their names.
# cmake -D RATIONS=dir -D OUTPUT=file -P embed.cmake
file(GLOB_RECURSE files RELATIVE "${RATIONS}" "${RATIONS}/*.toml")
list(SORT files)
set(code "// Made by .cmake/embed.cmake from rations/; do not edit.\n#include \"readers/built_in.hpp\"\n\nnamespace cropful::readers {\n\n")
string(APPEND code "std::span<BuiltIn const> built_in() {\n    static constexpr BuiltIn all[] = {\n")
foreach(name IN LISTS files)
    file(READ "${RATIONS}/${name}" text)
    string(APPEND code "        {\"${name}\", R\"---(${text})---\"},\n")
endforeach()
string(APPEND code "    };\n    return all;\n}\n\n}  // namespace cropful::readers\n")
file(WRITE "${OUTPUT}" "${code}")
