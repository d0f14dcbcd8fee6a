# shellcheck shell=bash
# ./dev test: every check one after the other, each with its time, and one closing line. Sourced by ./dev.

tests_run=0
tests_failed=0
failed_stages=()

# stage TITLE COMMAND...: runs a check; a failure is remembered and the next check still runs
stage() {
    local title=$1 begin=$SECONDS
    shift
    echo "== $title"
    if "$@"; then
        echo "-- $title: passed in $((SECONDS - begin)) s"
    else
        echo "-- $title: FAILED after $((SECONDS - begin)) s"
        failed_stages+=("$title")
    fi
    stages_run=$((${stages_run:-0} + 1))
}

# Ends in the words that ctest closes with, so that whatever reads ctest reads this.
close_stages() {
    local failed=$((tests_failed + ${#failed_stages[@]})) run
    run=$((tests_run + ${stages_run:-0}))
    echo
    [ ${#failed_stages[@]} -eq 0 ] || printf 'failed: %s\n' "${failed_stages[@]}"
    echo "$((run == 0 ? 0 : 100 * (run - failed) / run))% tests passed, $failed tests failed out of $run"
    echo "Total Test time (real) = $SECONDS sec"
    [ "$failed" -eq 0 ]
}

build_and_test() { build_preset "$1" && run_ctest "$@"; }

stages_fast() {
    stage "layers" python3 tools/check_layers.py
    stage "sizes" python3 tools/check_sizes.py
    stage "format" check_format
    stage "language" python3 tools/check_language.py
    stage "stories and sources" python3 tools/write_docs.py --check
    stage "dev build" build_preset dev
    stage "tests" run_ctest dev
}

# The whole of ./dev test ends within 40 minutes on 2 cores: linting comes last and begins no new file after this.
readonly lint_until_seconds=2100

lint_in_time() { lint_sources --seconds $((lint_until_seconds - SECONDS)); }

stages_full() {
    stage "scripts" lint_scripts
    stages_fast
    stage "WebAssembly build" build_preset wasm
    stage "WebAssembly cases" wasm_cases
    stage "web build" build_web
    stage "web types of the operations" web_generated
    stage "web unit tests" web_unit
    stage "web journeys" web_journeys
    stage "sanitizer build" build_preset asan
    stage "tests under sanitizers" run_ctest asan
    stage "fuzzing" fuzz_all asan 60
    stage "lint" lint_in_time
}

test_command() {
    case "$1" in
        fast)
            need_packages build check
            stages_fast
            ;;
        full)
            need_packages build wasm check web
            stages_full
            ;;
        *)
            echo "./dev test: '$1' is neither empty nor 'fast'" >&2
            return 2
            ;;
    esac
    close_stages
}
