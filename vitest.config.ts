import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // A test that was narrowed down while writing must not hide the others.
    allowOnly: false,
    passWithNoTests: false,
    maxWorkers: 2,
    // Some tests start the command itself; a busy machine takes its time.
    testTimeout: 60_000,
  },
})
