// Carries the headers that rooms share, compiled once (rooms.cmake); it has nothing of its own.
