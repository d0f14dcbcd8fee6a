# The core for WebAssembly with Debian's own clang 19: no SDK is fetched. Used by the wasm preset.
set(CMAKE_SYSTEM_NAME Generic)
set(CMAKE_SYSTEM_PROCESSOR wasm32)
set(CMAKE_CXX_COMPILER clang++-19)
set(CMAKE_CXX_COMPILER_TARGET wasm32-wasi)
set(CMAKE_AR llvm-ar-19)
set(CMAKE_RANLIB llvm-ranlib-19)
set(CMAKE_TRY_COMPILE_TARGET_TYPE STATIC_LIBRARY)
set(CMAKE_FIND_ROOT_PATH_MODE_LIBRARY ONLY)

# Header-only libraries come through links in a folder of their own: /usr/include itself holds the
# headers of the native C library, which must not be seen.
set(headers "${CMAKE_BINARY_DIR}/headers")
foreach(library IN ITEMS tl fmt nlohmann)
    if(NOT EXISTS "${headers}/${library}")
        file(MAKE_DIRECTORY "${headers}")
        file(CREATE_LINK "/usr/include/${library}" "${headers}/${library}" SYMBOLIC)
    endif()
endforeach()

# One thread, no exceptions, no run-time types: what serves them is left out.
# fmt without locales: what the project prints is the same in every place, and <locale> alone is 100 kB.
set(CMAKE_CXX_FLAGS_INIT "-fno-exceptions -fno-rtti -fno-threadsafe-statics -fvisibility=hidden -isystem ${headers} -DFMT_STATIC_THOUSANDS_SEPARATOR=\"','\"")
set(CMAKE_EXE_LINKER_FLAGS_INIT "-mexec-model=reactor -fuse-ld=/usr/bin/wasm-ld-19 -Wl,--gc-sections,--strip-all,-mllvm,-inline-threshold=-50 -flto")
