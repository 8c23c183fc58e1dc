import { lineFor } from "../api/client";

/** One thing done at a time, what was refused kept to be shown beside it, and the page asked anew afterwards. */
export interface Acting {
  readonly trouble: string | undefined;
  readonly busy: boolean;
  /** Whether it was done. */
  readonly act: (doing: () => Promise<unknown>) => Promise<boolean>;
}

export function acting(afterwards: () => Promise<void>): Acting {
  let trouble = $state<string>();
  let busy = $state(false);
  return {
    get trouble() {
      return trouble;
    },
    get busy() {
      return busy;
    },
    act: async (doing) => {
      if (busy) return false;
      busy = true;
      try {
        await doing();
        trouble = undefined;
        await afterwards();
        return true;
      } catch (refused) {
        trouble = lineFor(refused);
        return false;
      } finally {
        busy = false;
      }
    },
  };
}
