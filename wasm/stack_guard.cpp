/// Debian's WebAssembly libraries are built with stack protection but come without its two symbols.
/// Linear memory gives the canary little secrecy; it still catches a plain overrun, which then
/// traps.
extern "C" {
// NOLINTNEXTLINE: the names are the compiler's
unsigned long __stack_chk_guard = 0x5357'4154UL;

// NOLINTNEXTLINE: the names are the compiler's
[[noreturn]] void __stack_chk_fail() {
    __builtin_trap();
}
}
