# shellcheck shell=bash
# The web face: its packages from npm, its build, its tests. Sourced by ./dev.

# Debian's npm, unless the machine's Node.js brought one of its own.
need_npm() { command -v npm >/dev/null || install_packages npm; }

# npm's packages, once for each state of the lock file.
web_packages() {
    need_npm || return 1
    local mark=web/node_modules/.swathbook_lock
    if ! cmp -s web/package-lock.json "$mark"; then
        (cd web && npm ci --no-audit --no-fund --loglevel=error) && cp web/package-lock.json "$mark"
    fi
}

# Types and labels are made from the descriptions of the operations; what is committed must be what they say.
web_generated() {
    local program=build/dev/cli/swathbook fresh
    fresh=$(mktemp)
    "$program" operations --typescript >"$fresh"
    if ! cmp -s "$fresh" web/src/core/operations.gen.ts; then
        echo "web/src/core/operations.gen.ts is not what $program operations --typescript prints; make it anew" >&2
        rm -f "$fresh"
        return 1
    fi
    rm -f "$fresh"
}

# build_web: web/dist, from the module in build/wasm
build_web() { web_packages && (cd web && npm run --silent types && npm run --silent build -- --logLevel warn); }

# web_command: what concerns the web face alone
web_command() {
    need_packages build wasm check web
    build_preset wasm && build_preset dev swathbook swathbook-serve swathbook-paper
    build_web && web_generated && web_unit && web_journeys
}

web_unit() { web_packages && (cd web && npx vitest run --reporter=dot); }

web_journeys() { web_packages && (cd web && npx vitest run --config vitest.e2e.config.ts --reporter=dot); }
