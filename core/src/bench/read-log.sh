#!/bin/sh
# Reading a log of ten million rows against counting its line breaks. Build first: mvn -q -pl core -am compile
# Usage: core/src/bench/read-log.sh [ROWS]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
core=$(cd "$here/../.." && pwd)
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
fastcsv=$(find "$repository/de/siegmar/fastcsv" -name 'fastcsv-*.jar' | sort | tail -n 1)
exec java -Xmx1g -cp "$core/target/classes:$fastcsv" "$here/ReadLog.java" "$@"
