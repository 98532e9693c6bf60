#pragma once
// Marks a function for compilation for wider vector units too, chosen when the program starts. Not under
// sanitizers, whose start-up code such a choice would precede.
#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && !defined(__SANITIZE_ADDRESS__)
#define LOOPWRIGHT_WIDE __attribute__((target_clones("avx2", "default")))
#else
#define LOOPWRIGHT_WIDE
#endif
