export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

export function cardsNamed(cards: readonly number[]): string {
  return `${cards.length === 1 ? 'card' : 'cards'} ${cards.join(', ')}`;
}

export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Papers are told apart by letters: A for the first. */
export function letter(index: number): string {
  return String.fromCharCode(65 + Math.max(0, index));
}
