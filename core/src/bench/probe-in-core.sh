#!/bin/sh
# Whether a day's readings can be a core's, by modes and by the march on a grid: processor seconds and their ratio.
# Build first: mvn -q -pl core -am compile
# Usage: core/src/bench/probe-in-core.sh
set -eu
here=$(cd "$(dirname "$0")" && pwd)
core=$(cd "$here/../.." && pwd)
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
path=$core/target/classes
for jar in commons-math3; do
  path=$path:$(find "$repository" -name "$jar-[0-9]*.jar" ! -name '*sources*' | sort | tail -n 1)
done
java -Xmx1g -cp "$path" "$here/ProbeInCore.java"
