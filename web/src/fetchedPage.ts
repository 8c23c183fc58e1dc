const stamp = "tailblock-reloaded-at";
const soonMs = 10_000;

/**
 * A page's own script, fetched when first wanted. Where that fails, the program may have been renewed since this tab was
 * opened: the page is loaded afresh once, and only when that was in vain is it said.
 */
export function fetchedPage<Page>(load: () => Promise<Page>, say: (line: string) => void): () => Promise<Page> {
  return () =>
    load().catch((failed: unknown) => {
      const before = Number(sessionStorage.getItem(stamp) ?? 0);
      if (Date.now() - before > soonMs) {
        sessionStorage.setItem(stamp, String(Date.now()));
        window.location.reload();
      } else say("This page could not be fetched. See that Tailblock still runs on the shop's computer, then reload.");
      throw failed;
    });
}
