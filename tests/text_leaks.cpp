// Under LeakSanitizer: fontconfig and Pango keep what they read of the fonts until the process ends, by design.
extern "C" __attribute__((visibility("default"))) const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\nleak:libpango\n"; }
