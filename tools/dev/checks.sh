# shellcheck shell=bash
# The single checks that ./dev test, lint, fmt, fuzz and wasm are made of. Sourced by ./dev.

readonly source_folders=(core api store exchange reports server cli wasm tests fuzz bench examples)

own_sources() {
    find "${source_folders[@]}" -type f \( -name '*.cpp' -o -name '*.hpp' \) ! -name '*.gen.*' 2>/dev/null | sort
}
own_scripts() {
    echo dev
    echo .ci/run
    find tools bench tests -type f -name '*.sh' | sort
}

format_sources() { own_sources | xargs -r -n 20 -P "$(nproc)" clang-format-19 -i; }

check_format() {
    if ! own_sources | xargs -r -n 20 -P "$(nproc)" clang-format-19 --dry-run -Werror; then
        echo "format: run ./dev fmt" >&2
        return 1
    fi
}

lint_scripts() { own_scripts | xargs -r shellcheck -x; }

# clang-tidy over the core and the operations; a file seen clean is not looked at again until it,
# a header of its own or the rules change.
lint_sources() {
    [ -f build/dev/compile_commands.json ] || cmake --preset dev </dev/null >/dev/null || return 1
    python3 tools/lint_sources.py "$@"
}

# run_ctest PRESET [OPTION...]: runs the tests of a build; failures are printed in full
run_ctest() {
    local preset=$1 status=0
    shift
    ctest --preset "$preset" --no-tests=ignore -j "$(nproc)" "$@" </dev/null || status=$?
    count_tests "build/$preset/Testing/Temporary/LastTest.log"
    return "$status"
}

# count_tests LOG: adds the single tests a ctest log tells of to tests_run and tests_failed
count_tests() {
    [ -f "$1" ] || return 0
    local number
    while read -r number; do
        tests_run=$((tests_run + number))
    done < <(sed -n 's/^\[==========\] \([0-9]*\) tests\{0,1\} from .* ran.*/\1/p' "$1")
    number=$(grep -cE '^\[  FAILED  \] [^ ]+\.[^ ]+.* \([0-9]+ ms\)$' "$1" || true)
    tests_failed=$((tests_failed + number))
}

# fuzz_all PRESET SECONDS: every fuzz target of that build, one on each core
fuzz_all() {
    find "build/$1/fuzz" -maxdepth 1 -type f -name '*_fuzz' 2>/dev/null | sort |
        xargs -r -I{} -P "$(nproc)" tools/dev/fuzz_one.sh {} "$2"
}

# The same requests natively and in WebAssembly, answers compared byte for byte.
wasm_cases() {
    node tests/wasm/run_cases.mjs &&
        node tests/wasm/random_requests.mjs &&
        node --test-reporter=spec tests/wasm/book.mjs &&
        node --test-reporter=spec tests/wasm/paper.mjs
}
