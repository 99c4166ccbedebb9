// What reads the text of printed pages for the tests: poppler's pdftotext, or Debian's where it can be installed.
import { outputOf, run } from './machine.mjs'

/** Whether pdftotext is there, installed if need be. Without it the tests of printed pages are skipped, and say so. */
export function ensurePdfText() {
  if (hasPdfText()) return true
  if (process.getuid?.() !== 0 || outputOf('apt-get', ['--version']) === null) return false
  console.log("Installing Debian's poppler-utils …")
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  run('apt-get', ['-qq', 'update'], { env })
  run('apt-get', ['-qq', 'install', '--yes', '--no-install-recommends', 'poppler-utils'], { env })
  return hasPdfText()
}

const hasPdfText = () => outputOf('pdftotext', ['-v']) !== null
