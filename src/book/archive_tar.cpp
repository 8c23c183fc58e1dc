#include "book/archive_tar.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <cstring>
#include <istream>
#include <numeric>
#include <ostream>
#include <system_error>

#include "book/sha256.h"
#include "book/book.h"

namespace tailblock {
namespace {

constexpr std::size_t block_bytes = 512;
constexpr std::uint64_t most_bytes = (std::uint64_t{1} << 33U) - 1;  // eleven octal digits
using Block = std::array<char, block_bytes>;

/// Where a field of the header lies.
struct Field {
  std::size_t at, length;
};
constexpr Field name_field{0, 100}, mode{100, 8}, user{108, 8}, group{116, 8}, size_field{124, 12}, time_field{136, 12},
    sum_field{148, 8}, type{156, 1}, magic{257, 8}, major_device{329, 8}, minor_device{337, 8}, prefix{345, 155};
constexpr std::string_view ustar("ustar\00000", 8);

void put_text(Block& header, Field field, std::string_view text) {
  std::copy(text.begin(), text.end(), header.begin() + static_cast<std::ptrdiff_t>(field.at));
}

/// Octal digits over the whole field but its last byte, which stays zero.
void put_octal(Block& header, Field field, std::uint64_t value) {
  for (std::size_t i = field.length - 1; i-- > 0; value /= 8) {
    header[field.at + i] = static_cast<char>('0' + value % 8);
  }
}

std::string_view text_in(const Block& header, Field field) {
  const std::string_view text(header.data() + field.at, field.length);
  return text.substr(0, text.find('\0'));
}

/// The sum of the header's bytes, its own field counted as blanks.
unsigned sum_of(Block header) {
  std::fill_n(header.begin() + sum_field.at, sum_field.length, ' ');
  return std::accumulate(header.begin(), header.end(), 0U,
                         [](unsigned sum, char byte) { return sum + static_cast<unsigned char>(byte); });
}

Block header_of(const std::string& name, std::uint64_t bytes) {
  Block header{};
  put_text(header, name_field, name);
  put_octal(header, mode, 0644);
  put_octal(header, user, 0);
  put_octal(header, group, 0);
  put_octal(header, size_field, bytes);
  put_octal(header, time_field, 0);
  put_text(header, type, "0");
  put_text(header, magic, ustar);
  put_octal(header, major_device, 0);
  put_octal(header, minor_device, 0);
  put_octal(header, sum_field, sum_of(header));
  return header;
}

std::size_t padding_after(std::uint64_t bytes) { return (block_bytes - bytes % block_bytes) % block_bytes; }

[[noreturn]] void refuse_at(std::uint64_t byte, const std::string& why) {
  throw Refused("archive: byte " + std::to_string(byte) + ": " + why);
}

void require_written(const std::ostream& out) {
  if (out) return;
  const std::string why = errno == 0 ? "is the disk full?" : std::system_category().message(errno);
  throw StorageFault("the archive could not be written: " + why);
}

std::uint64_t octal_in(const Block& header, Field field, std::uint64_t header_at, const char* what) {
  const std::string_view text = text_in(header, field);
  const std::size_t end = text.find_last_not_of(' ') + 1;
  const std::size_t start = std::min(text.find_first_not_of(' '), end);
  std::uint64_t value = 0;
  const auto [stop, fault] = std::from_chars(text.data() + start, text.data() + end, value, 8);
  if (start == end || fault != std::errc() || stop != text.data() + end) {
    refuse_at(header_at, std::string(what) + " is not an octal number");
  }
  return value;
}

}  // namespace

void TarWriter::put(std::string_view bytes) {
  errno = 0;
  out_.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  require_written(out_);
}

TarWriter::Written TarWriter::add(const std::string& name, const std::function<void(const Write&)>& fill) {
  if (name.size() > name_field.length) throw Refused("archive: " + name + " is a name of more than 100 bytes");
  const auto start = out_.tellp();
  const auto put_header = [&](std::uint64_t bytes) {
    const Block header = header_of(name, bytes);
    put({header.data(), header.size()});
  };
  put_header(0);
  Written written;
  RunningSha256 sum;
  fill([&](std::string_view bytes) {
    put(bytes);
    sum.take(bytes);
    written.bytes += bytes.size();
  });
  if (written.bytes > most_bytes)
    throw Refused("archive: " + name + " is 8 GiB or more, which a ustar archive cannot hold");
  put(std::string(padding_after(written.bytes), '\0'));
  const auto end = out_.tellp();
  out_.seekp(start);
  put_header(written.bytes);
  out_.seekp(end);
  written.sha256 = sum.digits();
  return written;
}

void TarWriter::finish() {
  put(std::string(2 * block_bytes, '\0'));
  errno = 0;
  out_.flush();
  require_written(out_);
}

TarReader::TarReader(std::istream& in) : in_(in) {
  in_.seekg(0, std::ios::end);
  const std::streamoff end = in_.tellg();
  if (!in_ || end < 0) throw StorageFault("the archive could not be read");
  size_ = static_cast<std::uint64_t>(end);
  read_headers();
}

void TarReader::read_headers() {
  int empty_blocks = 0;
  in_.seekg(0);
  for (std::uint64_t at = 0; at < size_;) {
    Block header{};
    if (size_ - at < block_bytes) refuse_at(at, "the archive is cut short");
    in_.seekg(static_cast<std::streamoff>(at));
    if (!in_.read(header.data(), header.size())) throw StorageFault("the archive could not be read");
    if (header == Block{}) {
      ++empty_blocks;
      at += block_bytes;
      continue;
    }
    if (empty_blocks > 0) refuse_at(at, "something stands after the archive's end");
    if (std::string_view(header.data() + magic.at, magic.length) != ustar) refuse_at(at, "no ustar header stands here");
    if (octal_in(header, sum_field, at, "the header's checksum") != sum_of(header)) {
      refuse_at(at, "the header's checksum is wrong");
    }
    const char kind = header[type.at];
    if ((kind != '0' && kind != '\0') || !text_in(header, prefix).empty()) refuse_at(at, "a plain file was expected");
    const std::uint64_t bytes = octal_in(header, size_field, at, "the file's size");
    const std::uint64_t from = at + block_bytes;
    if (bytes > size_ - from || padding_after(bytes) > size_ - from - bytes) refuse_at(at, "the archive is cut short");
    const std::string name(text_in(header, name_field));
    if (!entries_.emplace(name, Entry{from, bytes}).second) refuse_at(at, "the same name stands twice");
    at = from + bytes + padding_after(bytes);
  }
  if (empty_blocks < 2) refuse_at(size_, "the archive's end is missing");
}

void TarReader::read(const std::string& name, const std::function<void(std::string_view)>& take) const {
  const Entry entry = entries_.at(name);
  std::array<char, 1 << 16> piece{};
  in_.seekg(static_cast<std::streamoff>(entry.at));
  for (std::uint64_t left = entry.bytes; left > 0;) {
    const std::size_t length = std::min<std::uint64_t>(left, piece.size());
    if (!in_.read(piece.data(), static_cast<std::streamsize>(length)))
      throw StorageFault("the archive could not be read");
    take({piece.data(), length});
    left -= length;
  }
}

std::string TarReader::whole(const std::string& name) const {
  std::string bytes;
  read(name, [&](std::string_view piece) { bytes += piece; });
  return bytes;
}

}  // namespace tailblock
