/** The shop's answer when it cannot do what was asked: one line for the person, and the field it is about, if any. */
export class Refusal extends Error {
  readonly field: string | undefined;
  /** Nothing is wrong with the question: the program has too many long ones just now. */
  readonly busy: boolean;

  constructor(line: string, busy = false) {
    super(line);
    this.busy = busy;
    const named = /^([a-z][a-z0-9_.[\]]*): /.exec(line);
    this.field = named?.[1];
  }
}

export type Query = Readonly<Record<string, string | number | undefined>>;

function address(path: string, query: Query): string {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== "") asked.set(name, String(value));
  }
  const text = asked.toString();
  return text === "" ? `/api/${path}` : `/api/${path}?${text}`;
}

async function arrived(request: Promise<Response>): Promise<Response> {
  try {
    return await request;
  } catch (trouble) {
    if (trouble instanceof DOMException && trouble.name === "AbortError") throw trouble;
    throw new Refusal("The shop's computer does not answer. Is Tailblock still running?");
  }
}

async function answer<T>(request: Promise<Response>): Promise<T> {
  const response = await arrived(request);
  const body: unknown = await response.json().catch(() => undefined);
  if (response.ok) return body as T;
  throw refusalOf(response, body);
}

function refusalOf(response: Response, body: unknown): Refusal {
  const busy = textOf(body, "busy");
  if (busy !== undefined) return new Refusal(busy, true);
  return new Refusal(refusalLine(body) ?? `The shop's computer answered ${response.status} and said no more.`);
}

function textOf(body: unknown, field: "refused" | "storage" | "busy"): string | undefined {
  if (typeof body !== "object" || body === null || !(field in body)) return undefined;
  const text: unknown = (body as Record<string, unknown>)[field];
  return typeof text === "string" ? text : undefined;
}

function refusalLine(body: unknown): string | undefined {
  return textOf(body, "refused") ?? textOf(body, "storage");
}

/** Tells this page from others, so that the program drops only our own older questions for our newer ones. */
const thisPage = Math.floor(Math.random() * 2 ** 32).toString(36);

export function ask<T>(path: string, query: Query = {}, signal?: AbortSignal): Promise<T> {
  return answer<T>(fetch(address(path, query), signal ? { signal } : {}));
}

function sent(method: "POST" | "PUT", path: string, body: unknown, signal?: AbortSignal): Promise<Response> {
  const headers = { "content-type": "application/json", "tailblock-page": thisPage };
  return fetch(address(path, {}), { method, headers, body: JSON.stringify(body), ...(signal ? { signal } : {}) });
}

export function send<T>(method: "POST" | "PUT", path: string, body: unknown, signal?: AbortSignal): Promise<T> {
  return answer<T>(sent(method, path, body, signal));
}

/** For an answer that is a file: a sound. */
export async function sendForFile(path: string, body: unknown, signal?: AbortSignal): Promise<ArrayBuffer> {
  const response = await arrived(sent("POST", path, body, signal));
  if (response.ok) return response.arrayBuffer();
  throw refusalOf(response, await response.json().catch(() => undefined));
}

export function sendText<T>(path: string, query: Query, text: string): Promise<T> {
  return answer<T>(
    fetch(address(path, query), { method: "POST", headers: { "content-type": "text/csv" }, body: text }),
  );
}

/** A photo, under its own type. */
export function sendFile<T>(path: string, file: Blob): Promise<T> {
  const headers = { "content-type": file.type || "application/octet-stream" };
  return answer<T>(fetch(address(path, {}), { method: "POST", headers, body: file }));
}

/** The line to show for whatever went wrong. */
export function lineFor(trouble: unknown): string {
  return trouble instanceof Error ? trouble.message : String(trouble);
}
