/** Where the reader is. Paths are plain (`/instruments/3`); the program answers every one of them with the same page. */
export interface Place {
  readonly path: string;
  readonly query: URLSearchParams;
}

function here(): Place {
  return { path: window.location.pathname, query: new URLSearchParams(window.location.search) };
}

let place = $state.raw<Place>(here());

export function currentPlace(): Place {
  return place;
}

/** `?today=` follows the reader from page to page. */
function withToday(target: string): string {
  const today = place.query.get("today");
  const url = new URL(target, window.location.origin);
  if (today !== null && !url.searchParams.has("today")) url.searchParams.set("today", today);
  return url.pathname + url.search + url.hash;
}

export function go(target: string): void {
  window.history.pushState(null, "", withToday(target));
  place = here();
  window.scrollTo(0, 0);
}

/** As `go`, but Back skips the page being left: after a form is saved, or a filter typed. */
export function replace(target: string): void {
  window.history.replaceState(null, "", withToday(target));
  place = here();
}

/** Follows links inside the book without fetching the page again. Returns the function that stops it. */
export function followLinks(): () => void {
  const back = (): void => {
    place = here();
  };
  const click = (event: MouseEvent): void => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return;
    const link = event.target instanceof Element ? event.target.closest("a[href^='/']") : null;
    if (!(link instanceof HTMLAnchorElement) || link.target !== "" || link.pathname.startsWith("/api/")) return;
    event.preventDefault();
    go(link.pathname + link.search + link.hash);
  };
  window.addEventListener("popstate", back);
  document.addEventListener("click", click);
  return () => {
    window.removeEventListener("popstate", back);
    document.removeEventListener("click", click);
  };
}
