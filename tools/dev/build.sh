# shellcheck shell=bash
# Building: one CMake preset, one folder build/PRESET. Sourced by ./dev.

# A compiler cache that survives `./dev clean`, and is shared by every copy of the repository.
if [ -z "${CCACHE_DIR:-}" ] && { [ -z "${HOME:-}" ] || [ ! -w "$HOME" ]; }; then
    export CCACHE_DIR="$PWD/build/.ccache"
fi
export CMAKE_COLOR_DIAGNOSTICS=OFF CLICOLOR=0


# build_preset PRESET [TARGET...]: configures and builds quietly; the whole log on failure
build_preset() {
    local preset=$1 log targets=()
    shift
    [ $# -eq 0 ] || targets=(--target "$@")
    mkdir -p build
    log="build/$preset.log"
    if ! { cmake --preset "$preset" && cmake --build --preset "$preset" -j "$(nproc)" "${targets[@]}"; } \
        </dev/null >"$log" 2>&1; then
        grep -vE '^\[[0-9]+/[0-9]+\] (Building|Linking)' "$log" | tail -n 200 >&2
        echo "./dev: the $preset build failed; the whole log is in $log" >&2
        return 1
    fi
}

build_command() {
    case "$1" in
        wasm) need_packages build wasm ;;
        release) need_packages build ;;
        *) need_packages build check ;;
    esac
    build_preset "$1"
    echo "built: build/$1"
}

# serve_command [OPTION...]: builds the program and, where it can be, the web app; serves both until Ctrl-C
serve_command() {
    need_packages build wasm
    build_preset release swathbook
    build_preset wasm
    build_web
    exec build/release/cli/swathbook serve --web web/dist "$@"
}
