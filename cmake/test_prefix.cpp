// Carries the headers that tests share, compiled once (checks.cmake); it has nothing of its own.
