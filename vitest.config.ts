import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // A test that was narrowed down while writing must not hide the others.
    allowOnly: false,
    passWithNoTests: false,
    maxWorkers: 2,
  },
})
