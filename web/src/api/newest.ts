/**
 * Asks at once, one question at a time: while one is on its way only the newest of the rest is kept, and asked next. For
 * sliders that the program answers within a frame. `stop` calls off what is on its way, so that no late answer is heard.
 */
export function newest<Question, Answer>(
  asking: (question: Question, signal: AbortSignal) => Promise<Answer>,
  hear: (answer: Answer, question: Question) => void,
  complain: (trouble: unknown, question: Question) => void,
): { ask: (question: Question) => void; stop: () => void } {
  let running: AbortController | undefined;
  let next: { readonly question: Question } | undefined;

  const run = async (question: Question): Promise<void> => {
    const mine = new AbortController();
    running = mine;
    try {
      const answer = await asking(question, mine.signal);
      if (running === mine) hear(answer, question);
    } catch (trouble) {
      if (running === mine) complain(trouble, question);
    }
    if (running !== mine) return;
    running = undefined;
    const waiting = next;
    next = undefined;
    if (waiting) void run(waiting.question);
  };

  const ask = (question: Question): void => {
    if (running) next = { question };
    else void run(question);
  };

  const stop = (): void => {
    running?.abort();
    running = undefined;
    next = undefined;
  };

  return { ask, stop };
}
