/** What the grid of prices says, and what is said while a price is typed over in it. */
export const words = {
  name: 'Prices found',
  columns: ['Code', 'Name', 'Supplier', 'Pack', 'Price', 'Since', 'In the catalogue'],
  how: 'To change a price: F2 or a figure on its row, or press it twice. Enter saves, Tab goes on.',
  seeDone: 'See or undo what was changed',
  old: 'old',
  notListed: 'not listed',
  inCatalogue: 'yes',
  box: (code: string) => `List price of ${code}`,
  beforeDiscount: (percent: number) => `On the list, before ${percent} % off`,
  noPrice: 'Type a price, or press Esc to leave it as it was.',
  noMoney: (typed: string) => `“${typed}” is no amount of money. Type pounds and pence, such as 12.50.`,
  negative: 'A price is nought or more.',
  nowIs: (code: string, was: string, now: string) => `${code}: ${was} is now ${now}.`,
} as const
