#!/bin/sh
# One bath solve, a smoked day, a 20 by 20 plan table and one fit, here and in SciPy, one after the other: processor seconds, the ratio,
# and the figure both must come to. Build first: mvn -q -pl core -am compile
# Usage: core/src/bench/bath-plans.sh
set -eu
here=$(cd "$(dirname "$0")" && pwd)
core=$(cd "$here/../.." && pwd)
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
path=$core/target/classes:$core/../reference-tables/target/classes
for jar in fastcsv commons-math3 jackson-databind jackson-core jackson-annotations; do
  path=$path:$(find "$repository" -name "$jar-[0-9]*.jar" ! -name '*sources*' | sort | tail -n 1)
done
ours=$(java -Xmx1g -cp "$path" "$here/BathPlans.java")
if ! python3 -c 'import scipy' 2>/dev/null; then
  printf '%s\nSciPy is not installed: nothing to compare with.\n' "$ours"
  exit 0
fi
theirs=$(OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 python3 "$here/bath_plans.py")
printf '%s\n%s\n' "$ours" "$theirs" | awk '
  !($1 in s) { s[$1] = $2; f[$1] = $3; next }
  { printf "%-6s here %.6f s, SciPy %.6f s, ratio %.0f; figures %s and %s\n", $1, s[$1], $2, $2 / s[$1], f[$1], $3 }'
