# A source includes its own header before anything else, which proves that the header compiles alone; headers without a
# source of their name are compiled by themselves (CMakeLists.txt).

function included(room, path, is_header, is_quoted,    own) {
  if (seen[FILENAME]++ || is_header) return
  own = substr(FILENAME, 3)
  sub(/cpp$/, "h", own)
  if (path != own && (getline line < own) >= 0) complain("the first include is not " own)
  close(own)
}
