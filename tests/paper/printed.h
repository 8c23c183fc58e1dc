#pragma once

// A printed sheet as someone else's program reads it.

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

namespace tailblock::testing {

/// A folder that goes away with the test.
class Folder {
 public:
  Folder() : path_(std::filesystem::temp_directory_path() / ("tailblock_paper." + std::to_string(::getpid()))) {
    std::filesystem::create_directories(path_);
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline void run(const std::string& command) {
  if (std::system((command + " > /dev/null 2>&1").c_str()) != 0) throw std::runtime_error("did not run: " + command);
}

inline std::string text_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// What a program says of a PDF: `said_of(pdf, "pdfinfo FILE")`; the word FILE stands for where it lies.
inline std::string said_of(const std::string& pdf, std::string command, const std::string& name = "sheet.pdf") {
  const Folder folder;
  std::ofstream(folder / name, std::ios::binary) << pdf;
  const std::string file = "'" + (folder / name).string() + "'";
  command.replace(command.find("FILE"), 4, file);
  const std::string answer = (folder / "answer").string();
  if (std::system((command + " > '" + answer + "' 2>&1").c_str()) != 0) {
    throw std::runtime_error("did not run: " + command + "\n" + text_of(answer));
  }
  return text_of(answer);
}

}  // namespace tailblock::testing
