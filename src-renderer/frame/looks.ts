import { useMantineColorScheme } from '@mantine/core'
import { useLayoutEffect, useState } from 'react'
import { keepHere, keptHere } from '../parts/kept-here.ts'

export const textSizes = ['usual', 'larger', 'largest'] as const
export type TextSize = (typeof textSizes)[number]
export const schemes = ['light', 'dark', 'auto'] as const
export type Scheme = (typeof schemes)[number]

const percent: Readonly<Record<TextSize, string>> = { usual: '100%', larger: '112.5%', largest: '125%' }

/** One of the words that are known, or the first of them that counts as usual. */
export function oneOf<T extends string>(known: readonly T[], kept: string | null, usual: T): T {
  return known.find((word) => word === kept) ?? usual
}

/** How the screen looks on this machine: the size of its text, and light or dark. */
export function useLooks() {
  const { colorScheme, setColorScheme } = useMantineColorScheme()
  const [textSize, setSize] = useState<TextSize>(() => oneOf(textSizes, keptHere('text-size'), 'usual'))
  useLayoutEffect(() => {
    document.documentElement.style.fontSize = percent[textSize]
  }, [textSize])
  useLayoutEffect(() => {
    const kept = keptHere('scheme')
    if (kept !== null) setColorScheme(oneOf(schemes, kept, 'auto'))
  }, [setColorScheme])
  return {
    textSize,
    scheme: colorScheme,
    setTextSize: (size: TextSize) => {
      keepHere('text-size', size)
      setSize(size)
    },
    setScheme: (scheme: Scheme) => {
      keepHere('scheme', scheme)
      setColorScheme(scheme)
    },
  }
}

export type Looks = ReturnType<typeof useLooks>
