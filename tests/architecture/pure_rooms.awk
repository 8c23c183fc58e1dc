# Above models nothing reads a file, a clock, the environment or an unseeded random number: values in, values out.

function impure(line) {
  return line ~ /#[ \t]*include[ \t]*<(fstream|filesystem|iostream|ctime|thread|csignal|unistd\.h|sys\/.*|time\.h)>/ ||
         line ~ /(random_device|system_clock|steady_clock|high_resolution_clock)/ ||
         line ~ /(^|[^_a-zA-Z.>])(getenv|fopen|srand|rand|std::clock)[ \t]*\(/ ||
         line ~ /(^|[^_a-zA-Z.>])time[ \t]*\([ \t]*(nullptr|NULL|0|&)/
}

{ split(FILENAME, place, "/") }

rank[place[2]] < rank["models"] && $0 !~ /^[ \t]*\/\// && impure($0) { complain(place[2] " is a pure room: " $0) }

function included(room, path, is_header, is_quoted) {}
