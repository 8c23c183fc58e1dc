import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [svelte()],
  build: {
    target: "es2022",
    assetsInlineLimit: 0, // nothing inline, so that the pages run under a strict content policy
    modulePreload: { polyfill: false },
  },
  // `npm run dev` serves the pages; the program (tailblock demo, on its usual port) answers the questions.
  server: { proxy: { "/api": process.env.TAILBLOCK_URL ?? "http://127.0.0.1:8484" } },
  test: { include: ["tests/*.test.ts"], environment: "node" },
});
