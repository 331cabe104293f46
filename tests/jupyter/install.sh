#!/usr/bin/env bash
# Installs what runs the notebooks in Jupyter: Jupyter itself where it is missing, and the .NET Interactive kernel into .tools.
set -euo pipefail
cd "$(dirname "$0")/../.."

version=1.0.712001                                # the last one published
root=$PWD/.tools
packages=${NUGET_PACKAGES:-$HOME/.nuget/packages}
export DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

if ! jupyter nbconvert --version >/dev/null 2>&1; then
    # Without Recommends the package of nbconvert's library alone would lack its command.
    sudo=$([ "$(id -u)" = 0 ] || echo sudo)
    $sudo apt-get update -qq
    DEBIAN_FRONTEND=noninteractive $sudo apt-get install -y -qq --no-install-recommends jupyter-notebook jupyter-nbconvert jupyter-client python3-ipykernel >/dev/null
fi

if ! [ -x "$root/dotnet-interactive" ]; then
    dotnet tool install Microsoft.dotnet-interactive --version "$version" --tool-path "$root"
fi

# The kernel carries FSharp.Core 10.0, Plotly.NET and Deedle need 10.1: without this copy each of their calls fails
# with FileNotFoundException. The restored package has the newer one.
core=$(sed -n 's/.*Include="FSharp.Core" Version="\([^"]*\)".*/\1/p' Directory.Packages.props)
app=$(dirname "$(find "$root" -name Microsoft.DotNet.Interactive.App.dll -print -quit)")
cp "$packages/fsharp.core/$core/lib/netstandard2.1/FSharp.Core.dll" "$app/"

# Into .tools, not into the user's own list of kernels; run.sh points Jupyter there.
mkdir -p "$root/jupyter/kernels"
PATH=$root:$PATH dotnet-interactive jupyter install --path "$root/jupyter/kernels"
