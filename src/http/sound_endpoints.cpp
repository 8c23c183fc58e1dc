#include "http/endpoints.h"
#include "http/wave_file.h"
#include "strings/note_sound.h"

namespace tailblock {

std::vector<Endpoint> sound_endpoints(const Shop&) {
  return {{.method = "POST",
           .path = "/api/note-sound",
           .summary = "One note as the bridge is driven by it, over the frets or as if there were none",
           .query = {},
           .request_schema = schema_of_request<NoteSoundRequest>(),
           .result_schema = {},
           .handle =
               [](const Ask& ask) {
                 const auto request = from_json<NoteSoundRequest>(ask.body);
                 return Answer{.status = 200,
                               .body = wave_file(note_sound(request), sound_samples_per_s),
                               .content_type = "audio/wav"};
               },
           .result_type = "audio/wav",
           .takes_long = true}};
}

}  // namespace tailblock
