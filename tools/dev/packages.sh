# shellcheck shell=bash
# Debian packages: what a command needs, installed when missing. Sourced by ./dev.

# packages_of GROUP...: the package names of these groups of tools/packages.txt
packages_of() {
    local wanted=" $* " group="" line
    while IFS= read -r line; do
        case "$line" in
            '== '*)
                group="${line#== }"
                group="${group%%:*}"
                ;;
            '' | '#'*) ;;
            *) [[ "$wanted" != *" $group "* ]] || echo "$line" ;;
        esac
    done <tools/packages.txt
}

# need_packages GROUP...: one look at dpkg; apt-get only when something is missing
need_packages() {
    local wanted present missing=() package
    mapfile -t wanted < <(packages_of "$@" | sort -u)
    present=$(dpkg-query -W -f='${binary:Package} ${db:Status-Status}\n' "${wanted[@]}" 2>/dev/null |
        sed -n 's/^\([^ :]*\)[^ ]* installed$/\1/p') || true
    for package in "${wanted[@]}"; do
        grep -qxF -- "$package" <<<"$present" || missing+=("$package")
    done
    [ ${#missing[@]} -eq 0 ] || install_packages "${missing[@]}"
}

install_packages() {
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null; then
            echo "./dev: these Debian packages are missing, and this is neither root nor sudo:" >&2
            echo "  apt-get install $*" >&2
            return 1
        fi
        as_root=(sudo -n)
        [ ! -t 0 ] || as_root=(sudo)
    fi
    echo "== installing $# Debian packages: $*"
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -qq </dev/null
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq \
        --no-install-recommends "$@" </dev/null >/dev/null
}
