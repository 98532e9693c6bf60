// Hamlib 4.5 keeps what it noted about a daemon when the line is closed (some 800 bytes a connection) and its
// list of drivers. The leak checker of the sanitized build is told to look at our own memory only.

extern "C" const char* __lsan_default_suppressions();  // NOLINT(bugprone-reserved-identifier)
extern "C" const char* __lsan_default_suppressions() { // NOLINT(bugprone-reserved-identifier)
    return "leak:libhamlib\n";
}
