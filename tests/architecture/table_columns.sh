#!/bin/sh
# usage: table_columns.sh ROOT
# Every table of data/ ends its header with the columns source and note; every row of tests/published/ names its
# source and says why its tolerance is what it is. (Lines that begin with # are remarks.)
cd "$1" || exit 2
bad=0
for table in data/*.csv; do
  [ -e "$table" ] || continue
  case $(grep -v '^#' "$table" | head -n 1 | tr -d '\r') in
    *,source,note) ;;
    *) echo "$table: its last columns are not source,note"; bad=1 ;;
  esac
done
for table in tests/published/*.csv; do
  [ -e "$table" ] || continue
  header=$(grep -v '^#' "$table" | head -n 1 | tr -d '\r')
  for column in source why; do
    case ",$header," in
      *,$column,*) ;;
      *) echo "$table: no column $column"; bad=1 ;;
    esac
  done
done
exit $bad
