# Sourced by the scripts beside it: what the machine must have, and the build.

say() { echo "sunup: $*" >&2; }

# usage SCRIPT: what the comment at its top says
usage() { sed -n '2,${/^#/!q;s/^# \{0,1\}//p}' "$1"; }

# help_wanted SCRIPT ARGUMENTS: says how it is used and ends, if an argument asks for it
help_wanted() {
  local script=$1 one
  shift
  for one in "$@"; do
    case $one in -h | --help) usage "$script"; exit 0 ;; esac
  done
}

need() {
  command -v "$1" >/dev/null 2>&1 && return 0
  say "$1 is missing. $2"
  exit 1
}

java_major() {
  java -XshowSettings:properties -version 2>&1 |
    sed -n 's/^ *java\.specification\.version = \([0-9]*\).*/\1/p'
}

check_machine() {
  need java "Install a JDK 17 or newer (Debian: apt-get install openjdk-17-jdk-headless)."
  need javac "Install a JDK, not only a JRE (Debian: apt-get install openjdk-17-jdk-headless)."
  need mvn "Install Maven 3.8 or newer (Debian: apt-get install maven)."
  need node "Install Node 20 or newer (Debian: apt-get install nodejs npm)."
  need npm "Install npm (Debian: apt-get install npm)."
  local major
  major=$(java_major)
  [ "${major:-0}" -ge 17 ] || { say "Java ${major:-?} is too old: install JDK 17 or newer."; exit 1; }
}

# Newer JDKs warn of what the network and database libraries do unless told that it is meant.
java_flags() {
  local major
  major=$(java_major)
  [ "$major" -ge 24 ] || return 0
  echo "--enable-native-access=ALL-UNNAMED --sun-misc-unsafe-memory-access=allow"
}

# changed ROOT STAMP: true if a source is newer than the stamp or the stamp is missing. A folder is
# newer when a file in it went; web/src alone is left out, where the build makes a folder itself.
changed() {
  [ -f "$2" ] || return 0
  [ -n "$(find "$1/pom.xml" "$1"/*/pom.xml "$1"/*/src "$1"/web/*.json "$1"/web/*.ts "$1"/web/*.html \
    -newer "$2" -not -path '*/generated*' -not -path "$1/web/src" -print -quit 2>/dev/null)" ]
}

# told LOG COMMAND...: runs the command with its output in LOG, says every 15 s that it goes on
told() {
  local log=$1 began=$SECONDS pid
  shift
  "$@" >"$log" 2>&1 &
  pid=$!
  trap 'kill "$pid" 2>/dev/null; exit 130' INT TERM
  while ! timeout 15 tail --pid="$pid" -f /dev/null; do
    say "  still at it ($((SECONDS - began)) s) ..."
  done
  trap - INT TERM
  wait "$pid"
}

build_if_changed() {
  local root=$1 stamp=$1/ops/target/built log=$1/target/build.log
  changed "$root" "$stamp" || return 0
  check_machine
  mkdir -p "$root/target"
  say "building (the first time fetches libraries and takes a few minutes) ..."
  touch "$root/target/began"
  if ! (cd "$root" && told "$log" mvn -B -ntp -DskipTests -Dmaven.test.skip=true package); then
    say "the build failed; the end of target/build.log says:"
    grep -E 'ERROR|error' "$log" | head -20 >&2 || tail -20 "$log" >&2
    exit 1
  fi
  mv "$root/target/began" "$stamp"
  say "built"
}
