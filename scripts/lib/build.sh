# Sourced by the scripts beside this folder: where the tree is, and how to configure and build a preset.
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)

# A compiler of this code takes up to about 0.7 GB: no more of them than cores, nor than memory allows.
jobs() {
    local cores memory
    cores=$(nproc)
    memory=$(awk '/^MemAvailable/ { print int($2 / 1000000) }' /proc/meminfo)
    if [ "$memory" -lt 1 ]; then memory=1; fi
    echo $((cores < memory ? cores : memory))
}

# From nothing, with no filled cache, fewer and larger units save minutes; see scripts/cmake/LoopwrightQuick.cmake.
first_build_options() {
    local cached=0
    # A machine without ccache has no cache, and the callers' `pipefail` must not end this before it says so.
    if command -v ccache >/dev/null; then
        cached=$(ccache --print-stats 2>/dev/null | awk '$1 == "files_in_cache" { print $2 }') || cached=0
    fi
    if [ "${cached:-0}" -lt 300 ]; then echo "-DLOOPWRIGHT_QUICK=ON"; fi
}

# configure PRESET [cmake options...]: only when it was not done before; ninja sees to every later change.
configure() {
    local preset=$1 log
    shift
    if [ -f "$root/build/$preset/build.ninja" ] && [ $# -eq 0 ]; then return; fi
    mkdir -p "$root/build"
    log="$root/build/configure-$preset.log"
    if ! (cd "$root" && cmake --preset "$preset" "$@") >"$log" 2>&1; then
        cat "$log" >&2
        return 1
    fi
}

# build PRESET [targets...]: prints progress only where somebody watches, errors always.
build() {
    local preset=$1 log="$root/build/build-$1.log"
    shift
    if [ -t 1 ]; then
        ninja -C "$root/build/$preset" -j "$(jobs)" "$@"
    elif ! ninja -C "$root/build/$preset" -j "$(jobs)" "$@" >"$log" 2>&1; then
        grep -v '^\[[0-9]*/[0-9]*\] \(Building\|Linking\|Automatic\)' "$log" >&2
        return 1
    fi
}
