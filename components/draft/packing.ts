import type { Packing } from '../../engine/intake/index.ts'

/** Everything that comes out of a stream, up to `most` bytes; null where there is more. */
async function gather(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | null> {
  const reader = stream.getReader()
  const parts: Uint8Array[] = []
  let size = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    size += value.length
    if (size > most) {
      await reader.cancel()
      return null
    }
    parts.push(value)
  }
  const all = new Uint8Array(size)
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}

const streamOf = (bytes: Uint8Array): ReadableStream<BufferSource> =>
  new Blob([bytes as Uint8Array<ArrayBuffer>]).stream()

/** The browser's own packing. */
export const browserPacking: Packing = {
  pack: async (bytes) =>
    (await gather(
      streamOf(bytes).pipeThrough(new CompressionStream('deflate-raw')),
      Number.POSITIVE_INFINITY,
    )) ?? new Uint8Array(),
  unpack: (bytes, most) => gather(streamOf(bytes).pipeThrough(new DecompressionStream('deflate-raw')), most),
  toBytes: (text) => new TextEncoder().encode(text),
  toText: (bytes) => new TextDecoder('utf-8', { fatal: true }).decode(bytes),
}
