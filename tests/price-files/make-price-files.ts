/**
 * Writes the price files beside it anew. Run by `node tests/price-files/make-price-files.ts`. All suppliers, goods,
 * codes and prices are invented; the GTINs are of the range that GS1 keeps for use inside a company (prefix 2).
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { catalogueXml } from './catalogue-for-tests.ts'
import { rowsXml, workbook } from './workbook-for-tests.ts'
import { packedZip } from './zip-for-tests.ts'

const put = (name: string, bytes: Buffer | string) => writeFileSync(join(import.meta.dirname, name), bytes)
const lines = (...all: readonly string[]) => `${all.join('\r\n')}\r\n`

/** Every character of these files that Windows-1252 places elsewhere than Latin-1 does. */
const in1252 = (text: string) => Buffer.from(text.replaceAll('€', '\x80').replaceAll('’', '\x92'), 'latin1')

put(
  'letterhead.csv',
  lines(
    'BRACKENHOLT SUPPLY,,,,,',
    '"Unit 4, Quarry Lane, Brackenholt",,,,,',
    'Tel 01632 960100,,sales@brackenholt.example.com,,,',
    ',,,,,',
    'Trade price list from 1 January 2027,,,,,',
    'Code,Description,Pack Qty,List Price,Per,Discount Group',
    '00126,"Elbow 15 mm, end feed",10,£1.05,each,EF',
    '00127,Tee 15 mm end feed,10,"£1,234.50 /100",,EF',
    '00128,Clip 15 mm single,100,£4.10,100,Clips & bands',
    'COPPER TUBE,,,,,',
    '00201,Copper tube 15 mm x 3 m,1,£12.34,pack,CT',
  ),
)
put(
  'decimal-comma.csv',
  in1252(
    lines(
      'Artikel;Description;Quantity per pack;Price;Valid from',
      'QD-10;Valve d’angle 15 mm;1;€ 3,-;13.01.2027',
      'QD-11;Towel rail 500 x 1200, white;1;1.234,50;13.01.2027',
      'QD-12;Pump head;1;1\u00A0234,50;13.01.2027',
      'QD-13;Olive 15 mm;50;12,5;13.01.2027',
    ).replace('Artikel;', 'Item code;'),
  ),
)
const wide = lines(
  'Part No\tDescription\tPack\tPrice',
  'T1\tFlux 100 g\t1\t£3.20',
  'T2\tSolder 250 g\t1\t£14.00',
)
put('tabs-utf16-marked.txt', Buffer.from(`\uFEFF${wide}`, 'utf16le'))
put(
  'pipes-utf16-unmarked.txt',
  Buffer.from(wide.replaceAll('\t', '|').replaceAll('£', ''), 'utf16le').swap16(),
)
put(
  'codes-as-text.csv',
  `\uFEFF${lines(
    'Code,Description,Price',
    '00126,"=HYPERLINK(""http://example.com"",""Elbow"")",1.05',
    '=1+1,+44 adaptor,2.10',
    '-5A,@SUM(A1),3.15',
    '5.01E+12,Code that a spreadsheet shortened,4.20',
  )}`,
)
put(
  'packs-in-words.csv',
  lines(
    'Product code,Description,Price',
    'P1,Wall plug brown pk 100,2.40',
    'P2,Pipe clip 15 mm box of 50,4.95',
    'P3,Screw 4 x 50 /100,6.20',
    'P4,Nail clip x 100,3.10',
    'P5,Washer 100 per box,5.00',
    'P6,Copper tube 15 mm 3m,12.34',
    'P7,Olive 15 mm bag/25,1.90',
    'P8,Screw 4 x 50,0.09',
    'P9,Copper tube 15 mm x 3m pk 10,118.00',
  ),
)
put(
  'price-breaks.csv',
  lines(
    'Code,Description,Pack size,Price,Break 1 qty,Break 1 price,Break 2 qty,Break 2 price',
    'B1,Elbow 15 mm,10,10.00,10,9.50,50,9.00',
    'B2,Tee 15 mm,10,12.00,5+,11.00,,',
  ),
)
put(
  'breaks-in-headings.csv',
  lines(
    'Code,Description,Pack size,Price,10+,25 off,Price 100+,Qty in stock',
    'H1,Elbow 15 mm,10,£10.00,£9.50,£9.00,£8.25,40',
    'H2,Tee 15 mm,10,£12.00,£11.00,,,12',
    'H3,Coupler 15 mm,10,£6.00,,,,7',
  ),
)
put(
  'breaks-out-of-order.csv',
  lines(
    'Code,Description,1-9,50 or more,10-49,Qty 200',
    'O1,Pipe clip 15 mm,0.40,0.30,0.35,0.25',
    'O2,Pipe clip 22 mm,0.50,0.45,0.55,0.60',
  ),
)
put(
  'dates-and-numbers.csv',
  lines(
    'Stock code,EAN,Description,Unit price,Pack qty,UOM,Category,Valid from,Valid to',
    'D1,2000000000015,Lockshield 15 mm,7.50,1,EA,Valves,31/01/2027,31/12/2027',
    'D2,2000000000016,Lockshield 10 mm,0.0345,100,EA,Valves,1 Feb 2027,',
    'D3,,Drain cock,2.005,1,EA,Valves,2027-02-03,',
    'D4,,Air vent,1.50,1,EA,Valves,46023,',
  ),
)
put(
  'no-headings.csv',
  lines(
    'NH100,Compression elbow 15 mm,2000000000022,3.25',
    'NH101,Compression tee 15 mm,2000000000039,4.75',
    'NH102,Compression coupler 15 mm,2000000000046,2.95',
  ),
)
put(
  'wrong-rows.csv',
  lines(
    'Code,Description,Pack,Price,Valid from',
    'W1,Right,1,1.00,01/02/2027',
    ',No code,1,1.00,01/02/2027',
    'W3,No price,1,,01/02/2027',
    'W4,Below nought,1,-2.50,01/02/2027',
    'W5,No amount,1,POA,01/02/2027',
    'W6,Past all sense,1,"1,000,000.01",01/02/2027',
    'W7,Comma for decimals,1,"12,50",01/02/2027',
    'W8,Pack of none,0,1.00,01/02/2027',
    'W9,No pack,some,1.00,01/02/2027',
    'W10,No such day,1,1.00,31/02/2027',
    'W11,The year 1900,1,1.00,60',
    'W12,In brackets,1,(2.50),01/02/2027',
    'W13,Less than half a penny,1,0.004,01/02/2027',
    ',,,,',
    'W15,Right again,1,0.005,01/02/2027',
  ),
)
put('headings-twice.csv', lines('Code,Description,Price,Price', 'H1,Elbow,1.00,1.20', 'H2,Tee,2.00,2.40'))
put(
  'open-quote.csv',
  lines('Code,Description,Price', 'O1,Elbow,1.00', 'O2,"1/2 bend,2.00', 'O3,Tee,3.00', 'O4,Cap,4.00'),
)
put('no-price.csv', lines('Code,Description,Stock', 'N1,Elbow 15 mm,yes', 'N2,Tee 15 mm,no'))
put('headings-only.csv', lines('Code,Description,Price'))
put('empty.csv', '')
put('zero-bytes.csv', Buffer.from('Code,Description,Price\r\nZ1,Elb\0ow,1.00\r\n', 'latin1'))
put('mixed-line-ends.csv', 'Code,Description,Price\r\nM1,"Elbow\r\n15 mm",1.00\nM2,Tee,2.00\rM3,Cap,3.00')
put(
  'workbook.xlsx',
  workbook([
    { name: 'Read me', cells: rowsXml([['Quarnmoor Trade Counter'], ['Prices are on the next sheet']]) },
    {
      name: 'Price list',
      cells: rowsXml([
        ['Quarnmoor Trade Counter'],
        [],
        ['Part number', 'Description', 'Pack size', 'Trade price', 'Group', 'Effective from'],
        [
          { value: 126, style: 1 },
          'Elbow 15 mm',
          10,
          { value: 10.5, style: 3 },
          'EF',
          { value: 46023, style: 2 },
        ],
        [
          { value: 127, style: 1 },
          'Tee 15 mm',
          10,
          { value: 12.340000000000002, formula: 'D4*1.2' },
          null,
          { value: 46024, style: 2 },
        ],
        ['Q-3', '=2+3', 1, '£1,234.50', null, { value: '2027-02-01', formula: 'TEXT(F4,"yyyy-mm-dd")' }],
      ]),
      after: '<mergeCells count="2"><mergeCell ref="A1:F1"/><mergeCell ref="E4:E6"/></mergeCells>',
    },
  ]),
)
put('renamed-zip.xlsx', packedZip([{ name: 'prices.txt', bytes: Buffer.from('Code,Price\r\nR1,1.00\r\n') }]))
put('old-workbook.xls', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0, 0, 0]))
put('web-page.xls', '<html><body><table><tr><td>Code</td><td>Price</td></tr></table></body></html>')
put('catalogue.xml', catalogueXml('GBP'))
put('catalogue-in-euro.xml', catalogueXml('EUR'))
put(
  'catalogue-with-entities.xml',
  catalogueXml('GBP').replace(
    '?>\n',
    '?>\n<!DOCTYPE Catalogue [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>\n',
  ),
)
