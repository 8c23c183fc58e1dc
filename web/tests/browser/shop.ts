import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";

export interface RunningShop {
  readonly address: string;
  readonly stop: () => Promise<void>;
}

const program =
  process.env.TAILBLOCK_PROGRAM ?? fileURLToPath(new URL("../../../build/release/tailblock", import.meta.url));

/** The real program with a fresh invented book, its calendar and clock held so that every run sees the same moment. */
export async function startShop(today = "2026-02-20", at = "10:40"): Promise<RunningShop> {
  const child = spawn(program, ["demo", "--no-open", "--port", "0", "--today", today, "--at", at], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const address = await printedAddress(child);
  return {
    address,
    stop: async () => {
      if (child.exitCode !== null) return;
      child.kill("SIGTERM");
      await once(child, "exit");
    },
  };
}

function printedAddress(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = "";
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (address) found(address[0]);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("error", failed);
    child.once("exit", (code) => failed(new Error(`${program} ended with ${code} before it served:\n${said}`)));
  });
}
