# The packages of the program that people get: in the released tree, which is configured for both.
if(CROPFUL_SANITIZE)
    python_test(package package/package.py "${PROJECT_BINARY_DIR}/released")
endif()
