#!/bin/sh
# usage: check.sh NAME ROOT
# Runs one check of the house over ROOT: include_direction, own_header_first, third_party_places, pure_rooms or table_columns.
# A fault is a line `file:line: what is wrong`, and a non-zero exit.
here=$(cd "$(dirname "$0")" && pwd)
if [ "$1" = table_columns ]; then exec sh "$here/table_columns.sh" "$2"; fi
cd "$2/src" || exit 2
find . -name '*.h' -o -name '*.cpp' | LC_ALL=C sort |
  xargs awk -v list="$here/third_party.txt" -f "$here/includes.awk" -f "$here/$1.awk"
