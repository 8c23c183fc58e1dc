# A room includes itself and the rooms above it in src/rooms.txt, by their path from src/.

function included(room, path, is_header, is_quoted,    to) {
  to = path
  sub(/\/.*/, "", to)
  if (!(room in rank)) complain(room " is not a room of src/rooms.txt")
  else if (to in rank && rank[to] > rank[room]) complain(room " includes " path ", which lies below it")
  else if (is_quoted && !(to in rank)) complain(path " is not a path from src/")
}
