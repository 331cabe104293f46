#!/usr/bin/env bash
# Runs the notebooks in Jupyter with the .NET Interactive kernel (see install.sh) and compares what they show with the
# committed outputs. Names as for ascham; without any, all notebooks. Ends with: N passed, N failed
set -uo pipefail
cd "$(dirname "$0")/../.."

out=$PWD/artifacts/jupyter
export PATH=$PWD/.tools:$PATH JUPYTER_PATH=$PWD/.tools/jupyter DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
rm -rf "$out"
mkdir -p "$out"

for notebook in notebooks/*.ipynb; do
    name=$(basename "$notebook" .ipynb)
    if [ $# -gt 0 ] && ! printf '%s\n' "$@" | grep -qx -- "$name"; then
        continue
    fi
    echo "$name: running in Jupyter"
    # A failing cell leaves no file, which the comparison then reports.
    jupyter nbconvert --to notebook --execute "$notebook" --output-dir "$out" --output "$name.ipynb" \
        --ExecutePreprocessor.timeout=300 --log-level=ERROR >"$out/$name.log" 2>&1 || tail -n 30 "$out/$name.log"
done

dotnet run --project src/Ascham.Runner -c Release --no-build -- check --executed "$out" "$@"
