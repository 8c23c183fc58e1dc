/**
 * Asks after a short pause and hears only the last answer: an earlier question is called off when a later one is asked.
 * For sliders and for readings as they are typed.
 */
export function latest<Question, Answer>(
  asking: (question: Question, signal: AbortSignal) => Promise<Answer>,
  hear: (answer: Answer, question: Question) => void,
  complain: (trouble: unknown, question: Question) => void,
  pauseMs = 40,
): { ask: (question: Question) => void; stop: () => void } {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: AbortController | undefined;

  const stop = (): void => {
    clearTimeout(timer);
    running?.abort();
    running = undefined;
  };

  const ask = (question: Question): void => {
    stop();
    timer = setTimeout(() => {
      const mine = new AbortController();
      running = mine;
      asking(question, mine.signal).then(
        (answer) => {
          if (running === mine) hear(answer, question);
        },
        (trouble: unknown) => {
          if (running === mine) complain(trouble, question);
        },
      );
    }, pauseMs);
  };

  return { ask, stop };
}
