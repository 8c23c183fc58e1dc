# A library is included only in the rooms that third_party.txt gives it, and by headers only where it says so.

BEGIN {
  while ((getline line < list) > 0) {
    if (line ~ /^#/ || line !~ /[^ ]/) continue
    words = split(line, word, " ")
    for (i = 3; i <= words; i++) place_of[word[1], word[i]] = word[2]
    known[word[1]] = 1
  }
}

function library_of(path,    library) {
  for (library in known) if (index(path, library) == 1) return library
  return ""
}

function included(room, path, is_header, is_quoted,    to, library, place) {
  to = path
  sub(/\/.*/, "", to)
  if (is_quoted || to in rank || path ~ /^[a-z0-9_]+$/) return  # our own; the standard library's
  library = library_of(path)
  place = place_of[library, room]
  if (library == "") complain("third_party.txt does not know <" path ">")
  else if (place == "") complain(room " does not include <" path "> (third_party.txt)")
  else if (is_header && place != "headers") complain("a header of " room " does not include <" path "> (third_party.txt)")
}
