# Shared reading of include lines: for each one, calls included(room, path, is_header) where room is the including
# file's room and path is what stands between the quotes or angle brackets. Run in src/ with room_file set.

BEGIN {
  while ((getline line < "rooms.txt") > 0) rank[line] = ++rooms
  if (!rooms) { print "src/rooms.txt names no room"; bad = 1; exit }
}

function complain(why) {
  print "src/" substr(FILENAME, 3) ":" FNR ": " why
  bad = 1
}

/^[ \t]*#[ \t]*include[ \t]*["<]/ {
  split(FILENAME, place, "/")
  split($0, part, /["<>]/)
  included(place[2], part[2], FILENAME ~ /\.h$/, $0 ~ /"/)
}

END { exit bad }
