import { describe, expect, it } from 'vitest'
import {
  about,
  bareMm,
  counted,
  degrees,
  heat,
  inSentence,
  listed,
  money,
  numberInWords,
  percent,
  printedName,
  quantity,
} from '../../../src-main/documents/in-words.ts'

const loose = (text: string) => text.replaceAll('\u00a0', ' ')

describe('figures in words', () => {
  it('money is pounds with two decimals and thousands parted', () => {
    expect(money(0)).toBe('£0.00')
    expect(money(5)).toBe('£0.05')
    expect(money(123_456_789)).toBe('£1,234,567.89')
    expect(money(-1250)).toBe('−£12.50')
  })

  it('a rate of tax is a percentage', () => {
    expect(percent(2000)).toBe('20%')
    expect(percent(1750)).toBe('17.5%')
  })

  it('heat is shown in both units: 1000 W are 3,412 BTU/h (NIST SP 811)', () => {
    expect(loose(heat(1000))).toBe('1,000 W (3,412 BTU/h)')
  })

  it('a quantity is shown in the unit a reader would use', () => {
    expect(loose(quantity(0.155, 'm'))).toBe('155 mm')
    expect(loose(quantity(4.5424, 'm'))).toBe('4.54 m')
    expect(loose(quantity(18.85, 'ml'))).toBe('19 ml')
    expect(loose(quantity(0.0804, 'm2'))).toBe('0.08 m²')
    expect(loose(quantity(1.98, 'L'))).toBe('1.98 L')
    expect(loose(quantity(16, 'km'))).toBe('16 km')
    expect(quantity(6, 'each')).toBe('6')
    expect(quantity(1, 'sum')).toBe('')
    expect(numberInWords(0.00412)).toBe('0.0041')
  })

  it('minutes of work are rounded to five, and never to nothing', () => {
    expect(loose(about(158))).toBe('about 2 h 40 min')
    expect(loose(about(118.4))).toBe('about 2 h')
    expect(loose(about(1))).toBe('about 5 min')
    expect(loose(quantity(97, 'min'))).toBe('about 1 h 35 min')
  })

  it('millimetres have no comma, and no minus before nothing', () => {
    expect(bareMm(1200)).toBe('1200')
    expect(bareMm(-0.02)).toBe('0')
    expect(bareMm(212.06)).toBe('212.1')
  })

  it('a temperature below nought has a true minus', () => {
    expect(loose(degrees(-3))).toBe('−3 °C')
    expect(loose(degrees(18.5))).toBe('18.5 °C')
  })

  it('names go into a sentence in small letters, but not TRV', () => {
    expect(inSentence('Single panel')).toBe('single panel')
    expect(inSentence('Łazienka')).toBe('łazienka')
    expect(inSentence('TRV on the flow')).toBe('TRV on the flow')
    expect(inSentence('4-column radiator')).toBe('4-column radiator')
  })

  it('things are listed and counted in English', () => {
    expect(listed([])).toBe('')
    expect(listed(['a'])).toBe('a')
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
    expect(loose(counted(1, 'hole'))).toBe('1 hole')
    expect(loose(counted(4, 'hole'))).toBe('4 holes')
    expect(printedName('Rail, 500 x 1200, G1/2 x G1/2, box x')).toBe('Rail, 500 × 1200, G1/2 × G1/2, box x')
  })
})
