# Above models nothing reads a file, a clock, the environment or an unseeded random number: values in, values out.

function impure(line) {
  return line ~ /#[ \t]*include[ \t]*<(fstream|filesystem|iostream|ctime|thread|csignal|unistd\.h|sys\/.*|time\.h)>/ ||
         line ~ /(^|[^_a-zA-Z])(random_device|system_clock|steady_clock|getenv|fopen|srand|rand|time)[ \t]*(\(|::|\{|;)/
}

{ split(FILENAME, place, "/") }

rank[place[2]] < rank["models"] && $0 !~ /^[ \t]*\/\// && impure($0) { complain(place[2] " is a pure room: " $0) }

function included(room, path, is_header, is_quoted) {}
