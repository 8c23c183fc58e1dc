import { defineConfig } from "vitest/config";

// Each file starts the program with a fresh invented book and drives a real Chromium against it.
export default defineConfig({
  test: {
    include: ["tests/browser/*.test.ts"],
    environment: "node",
    testTimeout: 300_000,
    hookTimeout: 300_000,
    fileParallelism: false,
    expect: { poll: { timeout: 20_000 } },
  },
});
