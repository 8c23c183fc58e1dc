#include "paper/finish_pdf.h"

#define POINTERHOLDER_TRANSITION 4  // the library asks: none of its old pointers are used here
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

namespace tailblock {
namespace {

/// Walks the tree of elements in reading order and gives each figure its words.
void name_pictures(QPDFObjectHandle element, const std::vector<std::string>& pictures, std::size_t& next) {
  if (element.isArray()) {
    for (int i = 0; i < element.getArrayNItems(); ++i) name_pictures(element.getArrayItem(i), pictures, next);
    return;
  }
  if (!element.isDictionary()) return;
  if (element.getKey("/S").isNameAndEquals("/Figure") && next < pictures.size()) {
    element.replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(pictures[next++]));
  }
  if (element.hasKey("/S") || element.hasKey("/ParentTree")) name_pictures(element.getKey("/K"), pictures, next);
}

}  // namespace

std::string finish_pdf(const std::string& pdf, const std::string& language, const std::vector<std::string>& pictures) {
  QPDF file;
  file.setSuppressWarnings(true);
  file.processMemoryFile("sheet", pdf.data(), pdf.size());
  QPDFObjectHandle root = file.getRoot();
  root.replaceKey("/Lang", QPDFObjectHandle::newUnicodeString(language));
  root.replaceKey("/ViewerPreferences", QPDFObjectHandle::parse("<< /DisplayDocTitle true >>"));
  root.replaceKey("/MarkInfo", QPDFObjectHandle::parse("<< /Marked true >>"));
  std::size_t next = 0;
  if (root.hasKey("/StructTreeRoot")) name_pictures(root.getKey("/StructTreeRoot"), pictures, next);
  QPDFWriter writer(file);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.write();
  const std::shared_ptr<Buffer> bytes = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()};
}

}  // namespace tailblock
