#!/bin/sh
# Shows that each check can fail: lays a small house with one fault of each kind and expects exactly those complaints.
here=$(cd "$(dirname "$0")" && pwd)
house=$(mktemp -d)
trap 'rm -rf "$house"' EXIT
mkdir -p "$house/src/air" "$house/src/models" "$house/src/book" "$house/data" "$house/tests/published"
printf 'air\nmodels\nbook\n' > "$house/src/rooms.txt"

cat > "$house/src/air/home.h" << 'END'
#pragma once
#include <vector>
#include <nlohmann/json.hpp>
#include "book/book.h"
# include <book/book.h>
#include "../book/book.h"
END
cat > "$house/src/air/home.cpp" << 'END'
#include "air/home.h"
#include <fstream>
double now() { return std::chrono::system_clock::now(); }
double weather() { return lifetime(rand()); }
double later(Reading reading) { return reading.time(0) + runtime(0) + WallTime().time; }  // no clock
END
cat > "$house/src/models/json.h" << 'END'
#include <nlohmann/json.hpp>
END
cat > "$house/src/models/json.cpp" << 'END'
#include <fstream>
#include "models/json.h"
#include <unheard/of.h>
#include "air/home.h"
END
printf '# a remark\nname,value,source,note\n' > "$house/data/good.csv"
printf 'name,value,note\n' > "$house/data/bad.csv"
printf 'source,expected,tolerance\n' > "$house/tests/published/bad.csv"

failed=0
expect() {  # check; expected complaints on standard input
  found=$(sh "$here/check.sh" "$1" "$house") && { echo "$1 passed a faulty house"; failed=1; }
  wanted=$(cat)
  if [ "$found" != "$wanted" ]; then
    printf '%s found\n%s\nand not\n%s\n' "$1" "$found" "$wanted"
    failed=1
  fi
}
expect include_direction << 'END'
src/air/home.h:4: air includes book/book.h, which lies below it
src/air/home.h:5: air includes book/book.h, which lies below it
src/air/home.h:6: ../book/book.h is not a path from src/
END
expect own_header_first << 'END'
src/models/json.cpp:1: the first include is not models/json.h
END
expect third_party_places << 'END'
src/air/home.h:3: air does not include <nlohmann/json.hpp> (third_party.txt)
src/models/json.cpp:3: third_party.txt does not know <unheard/of.h>
src/models/json.h:1: a header of models does not include <nlohmann/json.hpp> (third_party.txt)
END
expect pure_rooms << 'END'
src/air/home.cpp:2: air is a pure room: #include <fstream>
src/air/home.cpp:3: air is a pure room: double now() { return std::chrono::system_clock::now(); }
src/air/home.cpp:4: air is a pure room: double weather() { return lifetime(rand()); }
END
expect table_columns << 'END'
data/bad.csv: its last columns are not source,note
tests/published/bad.csv: no column why
END
exit $failed
