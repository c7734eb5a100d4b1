import { spawnSync } from 'node:child_process'
import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { killStragglers, runTallyplate } from './run-program.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
beforeAll(async () => {
  shop = await makeSmallShop()
  const more = path.join(shop.folder, 'suppliers')
  mkdirSync(more)
  writeFileSync(
    path.join(more, 'suppliers.csv'),
    'supplier,name,currency,carriage\nDALE,Dale Spares,GBP,5.95\n',
  )
  writeFileSync(
    path.join(more, 'offers.csv'),
    'supplier,part_number,supplier_code,price\nDALE,1E5,D15,9.50\nDALE,00480122,D22,31.00\n',
  )
  await sheets(['load', more])
})
afterAll(() => {
  killStragglers()
  shop.remove()
})

const sheets = (given: readonly string[]) => runTallyplate(given, { TALLYPLATE_FILE: shop.databaseFile })

function writeOrder(lines: string): string {
  const file = path.join(shop.folder, 'order.csv')
  writeFileSync(file, `part_number,quantity,brand,model_number,made\n${lines}`)
  return file
}

test('a sheet is drafted, checked, sent and written from the command line', async () => {
  const order = writeOrder('1E5,3,Tollbrae,TB 77310,\n')
  const drafted = await sheets([
    'sheets',
    '--from',
    order,
    '--supplier',
    'dale',
    '--initials',
    'ab',
    '--json',
  ])
  const { sheets: drafts } = JSON.parse(drafted.stdout) as { sheets: { number: string; total: string }[] }
  expect(drafts).toMatchObject([{ supplier: 'DALE', state: 'draft', net: '28.50', total: '34.45' }])
  const number = drafts[0]?.number ?? ''
  expect(await sheets(['sheets', number, '--check'])).toMatchObject({
    code: 0,
    stdout: expect.stringContaining(`${number} is checked.`),
  })
  const out = path.join(shop.folder, 'out')
  const sent = await sheets(['sheets', number, '--send', '--out', out, '--json'])
  expect(JSON.parse(sent.stdout)).toMatchObject({
    sheets: [{ number, supplier: 'DALE', state: 'sent', value: '34.45', lines: 1 }],
  })
  expect(readdirSync(path.join(out, `${number}-DALE`))).toHaveLength(4)
  const listed = await sheets(['sheets', '--state', 'sent'])
  expect(listed.stdout).toMatch(new RegExp(`^${number} +sent +DALE +GBP 34\\.45 +1 line +3 to come`))
}, 90_000)

test('a sheet with a stop stays a draft and ends with 1', async () => {
  const order = writeOrder('00480122,1,Quorvane,QV-1042/B,2015-06\n')
  const drafted = await sheets(['sheets', '--from', order, '--supplier', 'DALE', '--json'])
  const { sheets: drafts } = JSON.parse(drafted.stdout) as { sheets: { number: string }[] }
  const checked = await sheets(['sheets', drafts[0]?.number ?? '', '--check'])
  expect(checked.code).toBe(1)
  expect(checked.stdout).toMatch(/stays a draft: 1 to settle\.\n {2}STOP line 1, 00480122: Does not fit/)
})

test('what is asked wrongly is told in one line, and nothing is drafted', async () => {
  const order = writeOrder('1E5,two,,,\n')
  const drafted = await sheets(['sheets', '--from', order, '--supplier', 'DALE'])
  expect(drafted).toMatchObject({ code: 2, stderr: expect.stringContaining('“two” is no number of pieces') })
  expect(await sheets(['sheets', '--send'])).toMatchObject({ code: 2 })
  expect(await sheets(['sheets', '2020-0001'])).toMatchObject({
    code: 1,
    stderr: expect.stringContaining('There is no order sheet 2020-0001.'),
  })
})

test('who orders and how a supplier wants its orders are kept from files', async () => {
  const [buyer, ordering] = ['buyer.json', 'ordering.json'].map(name => path.join(shop.folder, name))
  writeFileSync(buyer ?? '', JSON.stringify({ name: 'Otterholt Repairs', country: 'GB' }))
  const columns = [
    { heading: 'Nr', holds: 'supplier-code' },
    { heading: 'Qty', holds: 'quantity' },
  ]
  const wanted = { account: 'AC-1', separator: ';', decimalSign: ',', dateOrder: 'dmy', columns }
  writeFileSync(ordering ?? '', JSON.stringify(wanted))
  const given = ['--buyer', buyer ?? '', '--ordering', ordering ?? '', '--supplier', 'dale']
  const kept = await sheets(['sheets', ...given, '--json'])
  expect(JSON.parse(kept.stdout)).toMatchObject({
    buyer: { name: 'Otterholt Repairs', country: 'GB' },
    isSaved: true,
    ordering: wanted,
  })
  writeFileSync(ordering ?? '', JSON.stringify({ ...wanted, columns: columns.slice(0, 1) }))
  expect(await sheets(['sheets', '--ordering', ordering ?? '', '--supplier', 'DALE'])).toMatchObject({
    code: 2,
    stderr: expect.stringContaining('no column holds the quantity'),
  })
})

test('the bundle writes the same files by itself, with its own faces', async () => {
  const [first] = (
    JSON.parse((await sheets(['sheets', '--state', 'sent', '--json'])).stdout) as {
      sheets: { number: string }[]
    }
  ).sheets
  const number = first?.number ?? ''
  // Away from the sources and from every package but the one with machine code.
  const away = path.join(shop.folder, 'installed')
  cpSync('dist', path.join(away, 'dist'), { recursive: true })
  cpSync('package.json', path.join(away, 'package.json'))
  mkdirSync(path.join(away, 'node_modules'))
  symlinkSync(realpathSync('node_modules/better-sqlite3'), path.join(away, 'node_modules/better-sqlite3'))
  const order = writeOrder('1E5,3,Tollbrae,TB 77310,\n')
  const run = (...given: string[]) => {
    const ran = spawnSync(process.execPath, ['dist/tallyplate.js', ...given, '--file', shop.databaseFile], {
      cwd: away,
      encoding: 'utf8',
    })
    expect(ran.stderr).toBe('')
    return ran.stdout
  }
  const out = path.join(shop.folder, 'bundled')
  run('sheets', number, '--out', out)
  const drafted = run('sheets', '--from', order, '--supplier', 'DALE', '--json')
  const { sheets: drafts } = JSON.parse(drafted) as { sheets: { number: string }[] }
  const next = drafts[0]?.number ?? ''
  run('sheets', next, '--check')
  run('sheets', next, '--out', out)
  await sheets(['sheets', next, '--out', path.join(shop.folder, 'from-sources')])
  for (const kind of ['csv', 'pdf', 'txt', 'xml']) {
    const name = path.join(`${next}-DALE`, `order-${next}.${kind}`)
    expect(
      readFileSync(path.join(out, name)).equals(readFileSync(path.join(shop.folder, 'from-sources', name))),
    ).toBe(true)
  }
}, 60_000)
