// Gives the shared precompiled header a source to be compiled with.
