/** `15 min (10 min to 25 min)`: as usual, seldom less, seldom more. */
export function spread(low: number, usual: number, high: number, spoken: (amount: number) => string): string {
  const words = spoken(usual);
  return low === high ? words : `${words} (${spoken(low)} to ${spoken(high)})`;
}
