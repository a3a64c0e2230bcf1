#include "studio/host/elf_check.hpp"

#include <elf.h>
#include <fcntl.h>
#include <link.h>
#include <sys/stat.h>
#include <unistd.h>

#include <bit>
#include <cerrno>
#include <cstring>
#include <limits>
#include <system_error>
#include <vector>

namespace quadrille {
namespace {

using FileHeader = ElfW(Ehdr);
using Segment = ElfW(Phdr);
using Section = ElfW(Shdr);
using Symbol = ElfW(Sym);

constexpr std::uint64_t most_table_bytes = 256u << 20;

#if defined(__x86_64__)
constexpr std::uint16_t own_machine = EM_X86_64;
#elif defined(__aarch64__)
constexpr std::uint16_t own_machine = EM_AARCH64;
#elif defined(__i386__)
constexpr std::uint16_t own_machine = EM_386;
#elif defined(__arm__)
constexpr std::uint16_t own_machine = EM_ARM;
#elif defined(__riscv)
constexpr std::uint16_t own_machine = EM_RISCV;
#elif defined(__powerpc64__)
constexpr std::uint16_t own_machine = EM_PPC64;
#elif defined(__s390x__)
constexpr std::uint16_t own_machine = EM_S390;
#endif

/// A regular file open for reading at any place; knows its size.
class OpenFile {
 public:
  explicit OpenFile(const std::filesystem::path& path)
      : descriptor_(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)) {
    if (descriptor_ < 0) {
      problem_ = errno == ENOENT ? "It is a link to a file that is not there."
                                 : "It cannot be read: " + std::generic_category().message(errno) + ".";
      return;
    }
    struct stat status {};
    if (::fstat(descriptor_, &status) != 0)
      problem_ = "It cannot be read: " + std::generic_category().message(errno) + ".";
    else if (S_ISDIR(status.st_mode))
      problem_ = "It is a folder, not a library.";
    else if (!S_ISREG(status.st_mode))
      problem_ = "It is not a regular file.";
    else
      size_ = static_cast<std::uint64_t>(status.st_size);
  }
  ~OpenFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  const std::string& problem() const { return problem_; }
  std::uint64_t size() const { return size_; }
  bool holds(std::uint64_t offset, std::uint64_t bytes) const { return offset <= size_ && bytes <= size_ - offset; }

  /// False where the file does not hold these bytes, or they cannot be read.
  bool read(std::uint64_t offset, void* into, std::uint64_t bytes) const {
    if (!holds(offset, bytes)) return false;
    auto* place = static_cast<char*>(into);
    while (bytes > 0) {
      const ssize_t got = ::pread(descriptor_, place, bytes, static_cast<off_t>(offset));
      if (got < 0 && errno == EINTR) continue;
      if (got <= 0) return false;
      place += got;
      offset += static_cast<std::uint64_t>(got);
      bytes -= static_cast<std::uint64_t>(got);
    }
    return true;
  }

  template <class Entry>
  bool read_table(std::uint64_t offset, std::uint64_t bytes, std::vector<Entry>& into) const {
    if (bytes > most_table_bytes || !holds(offset, bytes)) return false;
    into.resize(bytes / sizeof(Entry));
    return read(offset, into.data(), into.size() * sizeof(Entry));
  }

 private:
  int descriptor_ = -1;
  std::uint64_t size_ = 0;
  std::string problem_;
};

std::string header_damage(const FileHeader& header) {
  constexpr unsigned char own_class = sizeof(void*) == 8 ? ELFCLASS64 : ELFCLASS32;
  constexpr unsigned char own_order = std::endian::native == std::endian::little ? ELFDATA2LSB : ELFDATA2MSB;
  if (std::memcmp(header.e_ident, ELFMAG, SELFMAG) != 0) return "It is not a library: it does not begin as one does.";
  if (header.e_ident[EI_CLASS] != own_class || header.e_ident[EI_DATA] != own_order || header.e_machine != own_machine)
    return "It is a library for another kind of machine.";
  if (header.e_ident[EI_VERSION] != EV_CURRENT) return "It is a library of an unknown format.";
  if (header.e_type != ET_DYN) return "It is a program or an object file, not a shared library.";
  if (header.e_phentsize != sizeof(Segment) || header.e_shentsize != sizeof(Section) || header.e_phnum == 0 ||
      header.e_shnum == 0)
    return "It is damaged: its headers do not say where its parts lie.";
  return {};
}

/// `segments` must lie in the file: what is mapped beyond its end ends the program at the first touch.
std::string segment_damage(const OpenFile& file, const std::vector<Segment>& segments) {
  bool loads = false, dynamic = false;
  for (const Segment& segment : segments) {
    if (segment.p_type != PT_LOAD && segment.p_type != PT_DYNAMIC) continue;
    constexpr auto most = std::numeric_limits<decltype(segment.p_vaddr)>::max();
    if (!file.holds(segment.p_offset, segment.p_filesz) || segment.p_filesz > segment.p_memsz ||
        segment.p_vaddr > most - segment.p_memsz)
      return "It is damaged: it ends before its contents do.";
    (segment.p_type == PT_LOAD ? loads : dynamic) = true;
  }
  return loads && dynamic ? std::string() : "It is damaged: it has nothing that can be loaded.";
}

/// Where the file holds `bytes` bytes that will be loaded at `address`.
std::optional<std::uint64_t> offset_of(const std::vector<Segment>& segments, std::uint64_t address,
                                       std::uint64_t bytes) {
  for (const Segment& segment : segments) {
    if (segment.p_type != PT_LOAD || address < segment.p_vaddr) continue;
    const std::uint64_t within = address - segment.p_vaddr;
    if (within <= segment.p_filesz && bytes <= segment.p_filesz - within) return segment.p_offset + within;
  }
  return std::nullopt;
}

bool is_exported_object(const Symbol& symbol) {
  const unsigned binding = symbol.st_info >> 4, type = symbol.st_info & 0xF, visibility = symbol.st_other & 0x3;
  return symbol.st_shndx != SHN_UNDEF && type == STT_OBJECT && (binding == STB_GLOBAL || binding == STB_WEAK) &&
         (visibility == STV_DEFAULT || visibility == STV_PROTECTED);
}

/// Looks `name` up in the dynamic symbol table; false where the tables contradict themselves.
bool find_symbol(const OpenFile& file, const std::vector<Section>& sections, const std::string& name,
                 std::optional<Symbol>& found) {
  for (const Section& section : sections) {
    if (section.sh_type != SHT_DYNSYM) continue;
    std::vector<Symbol> symbols;
    std::vector<char> names;
    if (section.sh_entsize != sizeof(Symbol) || section.sh_link >= sections.size()) return false;
    const Section& text = sections[section.sh_link];
    if (text.sh_type != SHT_STRTAB || !file.read_table(section.sh_offset, section.sh_size, symbols) ||
        !file.read_table(text.sh_offset, text.sh_size, names))
      return false;
    for (const Symbol& symbol : symbols) {
      if (symbol.st_name >= names.size()) return false;
      const bool same = names.size() - symbol.st_name > name.size() &&
                        std::memcmp(&names[symbol.st_name], name.c_str(), name.size() + 1) == 0;
      if (same && is_exported_object(symbol)) found = symbol;
    }
  }
  return true;
}

}  // namespace

LibraryLook look_into_library(const std::filesystem::path& path, const std::string& symbol) {
  LibraryLook look;
  const auto damaged = [&look](std::string sentence) {
    look.damage = std::move(sentence);
    return look;
  };
  const OpenFile file(path);
  if (!file.problem().empty()) return damaged(file.problem());
  if (file.size() == 0) return damaged("It is empty.");
  FileHeader header{};
  if (!file.read(0, &header, std::min<std::uint64_t>(sizeof header, file.size()))) return damaged("It cannot be read.");
  if (std::string damage = header_damage(header); !damage.empty()) return damaged(std::move(damage));

  std::vector<Segment> segments;
  std::vector<Section> sections;
  if (!file.read_table(header.e_phoff, std::uint64_t{header.e_phnum} * sizeof(Segment), segments) ||
      !file.read_table(header.e_shoff, std::uint64_t{header.e_shnum} * sizeof(Section), sections))
    return damaged("It is damaged: it ends before its contents do.");
  if (std::string damage = segment_damage(file, segments); !damage.empty()) return damaged(std::move(damage));

  std::optional<Symbol> found;
  if (!find_symbol(file, sections, symbol, found))
    return damaged("It is damaged: its symbol table contradicts itself.");
  if (!found) return look;
  look.exported = true;
  look.symbol_size = found->st_size;
  std::array<std::uint32_t, 3> words{};
  const auto offset = offset_of(segments, found->st_value, sizeof words);
  if (offset && file.read(*offset, words.data(), sizeof words)) look.first_words = words;
  return look;
}

}  // namespace quadrille
