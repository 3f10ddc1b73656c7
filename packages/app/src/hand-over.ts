/** Lets somebody keep a file: the browser asks where, or puts it among the downloads. */
export function handOver(bytes: Uint8Array, name: string, ending = 'sillsight'): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type: 'application/octet-stream' }))
  const link = document.createElement('a')
  link.href = url
  link.download = `${fileName(name)}.${ending}`
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** Letters, digits and dashes of any script; what a file system could trip over goes. */
function fileName(name: string): string {
  return (
    name
      .normalize('NFC')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 60) || 'door'
  )
}
