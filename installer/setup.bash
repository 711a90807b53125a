# Sets up what the program and its tests need: system packages, a virtual environment, Python packages.
#
# Sourced by installer/start, installer/test and installer/pictures. Laws: a finished set-up is recognised by a stamp
# (hash of everything that it depends on) and costs no work; an interrupted one leaves a mark and is made anew; nothing is
# changed outside `.venv` and the system's package list; every failure says what is wrong and what to do.

checkout=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)
environment=$checkout/.venv
python=$environment/bin/python
unfinished=$environment/unfinished
leave_packages=no
details=

say() { printf '%s\n' "$*" >&2; }

fail() {
    say "Baywright: $1"
    shift
    local line
    for line in "$@"; do say "  $line"; done
    exit 1
}

# Runs a command, its output kept for the case that it fails. $1: what to say, rest: the command.
quietly() {
    local what=$1
    shift
    say "$what …"
    [ -n "$details" ] || details=$(mktemp "${TMPDIR:-/tmp}/baywright-set-up.XXXXXX")
    "$@" >"$details" 2>&1 </dev/null
}

last_details() {
    say "What it said last (all of it is in $details):"
    tail -n 8 "$details" | cut -c 1-200 | sed 's/^/  | /' >&2
}

# ---- system packages ---------------------------------------------------------------------------------------------

# Prints the entries of packages.txt that belong to the sets named and of which nothing is installed.
missing_packages() {
    local set entry name here
    local -a entries=() names=()
    while read -r set entry _; do
        case " $* " in *" $set "*) entries+=("$entry") ;; esac
    done < <(grep -v '^#' "$checkout/installer/packages.txt")
    [ ${#entries[@]} -gt 0 ] || return 0
    read -r -a names < <(printf '%s ' "${entries[@]}" | tr '|' ' ')
    here=" $(dpkg-query -W -f='${db:Status-Status}=${Package} ' "${names[@]}" 2>/dev/null || true)"
    for entry in "${entries[@]}"; do
        for name in ${entry//|/ }; do
            case $here in *" installed=$name "*) continue 2 ;; esac
        done
        printf '%s\n' "$entry"
    done
}

# Of an entry's names the first that this system's package lists know.
package_to_install() {
    local name
    for name in ${1//|/ }; do
        if apt-cache show --no-all-versions "$name" >/dev/null 2>&1; then
            printf '%s\n' "$name"
            return
        fi
    done
    printf '%s\n' "${1##*|}"
}

# Installs the packages of the sets named that are missing.
need_packages() {
    local entry missing
    local -a as_root=() names=()
    [ "$leave_packages" = no ] || return 0
    command -v dpkg-query >/dev/null || return 0
    missing=$(missing_packages "$@")
    [ -n "$missing" ] || return 0
    for entry in $missing; do names+=("${entry##*|}"); done
    local by_hand="apt-get install ${names[*]}"
    command -v apt-get >/dev/null || fail "these system packages are missing: ${names[*]}" \
        "There is no apt-get here; install them by this system's own means, then start again with --no-packages."
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || fail "system packages are missing, and installing them needs the administrator." \
            "Ask for (as root):  $by_hand" "or go on without them:  --no-packages"
        as_root=(sudo)
        if [ ! -t 0 ] || [ ! -t 2 ]; then as_root=(sudo -n); fi
        "${as_root[@]}" true || fail "system packages are missing, and sudo did not let them be installed." \
            "Ask for (as root):  $by_hand" "or go on without them:  --no-packages"
    fi
    install_packages "$missing" "$by_hand"
}

install_packages() {
    local missing=$1 by_hand=$2 entry lists=fresh
    local -a apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=120) names=()
    quietly "Reading the lists of system packages" "${apt[@]}" update || lists=old
    for entry in $missing; do names+=("$(package_to_install "$entry")"); done
    if ! quietly "Installing system packages (${#names[@]})" "${apt[@]}" install -y --no-install-recommends "${names[@]}"; then
        last_details
        [ $lists = fresh ] || say "The lists of system packages could not be fetched either: is there a network?"
        fail "the system packages could not be installed." "Try by hand (as root):  $by_hand" \
            "then start again; what is done already is kept."
    fi
}

# ---- Python --------------------------------------------------------------------------------------------------------

# Prints a Python that can make a virtual environment and for which the locked packages are tested.
find_python() {
    local name path
    for name in python3 python3.13 python3.12 python3.11; do
        path=$(command -v "$name") || continue
        if "$path" -c 'import sys, ensurepip, venv; sys.exit(not (3, 11) <= sys.version_info[:2] <= (3, 13))' 2>/dev/null; then
            printf '%s\n' "$path"
            return
        fi
    done
    return 1
}

make_environment() {
    local base
    if ! base=$(find_python); then
        need_packages python
        base=$(find_python) || fail "no Python from 3.11 to 3.13 with the module venv was found." \
            "On Debian (as root):  apt-get install python3 python3-venv"
    fi
    rm -rf -- "$environment" || fail "the old folder $environment could not be removed." "Remove it, then start again."
    { mkdir -- "$environment" && : >"$unfinished"; } || fail "the folder $environment could not be made."
    if ! quietly "Making the virtual environment with $("$base" --version 2>&1)" "$base" -m venv "$environment"; then
        last_details
        fail "the virtual environment could not be made in $environment."
    fi
}

# A virtual environment that is whole, and whose Python still is the one that it was made with.
environment_works() {
    [ ! -e "$unfinished" ] && [ -x "$python" ] && "$python" -c 'import pip' 2>/dev/null
}

# Everything that the Python side depends on, as one line. $1: the list of pinned packages.
fingerprint() {
    {
        cat "$checkout/pyproject.toml" "$checkout/installer/requirements.txt" "$checkout/installer/$1"
        printf '%s\n' "$checkout" "$(readlink -f "$python")"
    } | sha256sum | cut -d ' ' -f 1
}

is_stamped() {
    local stamp=$environment/stamp-$1 before
    [ ! -e "$unfinished" ] && [ -x "$python" ] && read -r before 2>/dev/null <"$stamp" && [ "$before" = "$(fingerprint "$1")" ]
}

install_python_packages() {
    local -a pip=("$python" -m pip --disable-pip-version-check --no-input install)
    : >"$unfinished"
    if ! quietly "Installing the Python packages (the first time some 200 MB are fetched)" "${pip[@]}" -r "$checkout/installer/$1"; then
        last_details
        fail "the Python packages could not be installed." \
            "Is there a network, and room on the disk? Start again when there is; the set-up then begins anew."
    fi
    if ! quietly "Installing Baywright itself" "${pip[@]}" --no-deps --no-build-isolation --editable "$checkout"; then
        last_details
        fail "Baywright could not be installed into $environment."
    fi
    rm -- "$unfinished"
}

packages_load() {
    quietly "Trying the Python packages" "$python" -c \
        'import defusedxml, matplotlib, numpy, openpyxl, ortools.sat.python.cp_model, pandas, pydantic, PySide6, baywright'
}

# Makes the virtual environment fit the list of pinned packages $1; does nothing where it does already.
need_python_packages() {
    if is_stamped "$1"; then return; fi
    if [ ! -w "$checkout" ]; then
        fail "the set-up has to write into $checkout, and that folder cannot be written." \
            "Copy it to a folder of your own and start there:  cp -r '$checkout' ~/baywright && ~/baywright/installer/start"
    fi
    exec 9<"${BASH_SOURCE[0]}"
    if command -v flock >/dev/null && ! flock -n 9; then
        say "Another set-up of this folder is running; waiting for it …"
        flock 9
    fi
    if ! is_stamped "$1"; then
        # What an older or a damaged environment holds may not do even where pip is content with it: then anew.
        if ! { environment_works && install_python_packages "$1" && packages_load; }; then
            make_environment
            install_python_packages "$1"
            if ! packages_load; then
                last_details
                fail "the Python packages are there, but do not load."
            fi
        fi
        fingerprint "$1" >"$environment/stamp-$1"
    fi
    exec 9<&-
}

finish_set_up() {
    if [ -n "$details" ]; then rm -f -- "$details"; fi
}
