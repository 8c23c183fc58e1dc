/** One sound at a time, and none before somebody asks for it. */
let context: AudioContext | undefined;
let source: AudioBufferSourceNode | undefined;

export function hush(): void {
  if (!source) return;
  source.onended = null;
  source.stop();
  source = undefined;
}

/** Plays a sound file from its beginning; whatever played before stops. Resolves once it plays. */
export async function play(file: ArrayBuffer, ended: () => void): Promise<void> {
  context ??= new AudioContext();
  const sounding = context;
  const [sound] = await Promise.all([sounding.decodeAudioData(file), sounding.resume()]);
  hush();
  const next = sounding.createBufferSource();
  next.buffer = sound;
  next.connect(sounding.destination);
  next.onended = () => {
    if (source === next) source = undefined;
    ended();
  };
  next.start();
  source = next;
}
