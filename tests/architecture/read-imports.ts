import { parseSync } from 'vite'

export interface SourceImport {
  /** As written: `./decide-fit.ts`, `node:path`. */
  readonly specifier: string
  readonly form: 'import' | 'export from' | 'import()' | 'import type()' | 'require'
}

export interface SourceFacts {
  readonly imports: readonly SourceImport[]
  /** Ways to load a module that reading cannot follow. */
  readonly unreadable: readonly string[]
  readonly comments: readonly string[]
  readonly saysAny: boolean
}

interface Node {
  readonly type: string
  readonly [member: string]: unknown
}

/** Reads every form of import in a source, those of types included, from its syntax tree. */
export function readSource(file: string, text: string): SourceFacts {
  const { program, comments, errors } = parseSync(file, text)
  if (errors[0] !== undefined) throw new Error(`${file} does not parse: ${errors[0].message}`)
  const facts = { imports: [] as SourceImport[], unreadable: [] as string[], saysAny: false }
  visit(program as unknown as Node, node => readNode(node, facts))
  return { ...facts, comments: comments.map(({ value }) => value) }
}

function readNode(
  node: Node,
  facts: { imports: SourceImport[]; unreadable: string[]; saysAny: boolean },
): void {
  if (node.type === 'TSAnyKeyword') facts.saysAny = true
  const loading = findLoading(node)
  if (loading === undefined) return
  const specifier = literal(loading.module)
  if (specifier === undefined) facts.unreadable.push(`${loading.form} of what is only known when it runs`)
  else facts.imports.push({ specifier, form: loading.form })
}

interface Loading {
  readonly module: unknown
  readonly form: SourceImport['form']
}

function findLoading(node: Node): Loading | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
      return { module: node.source, form: 'import' }
    case 'ExportAllDeclaration':
      return { module: node.source, form: 'export from' }
    case 'ExportNamedDeclaration':
      return node.source === null ? undefined : { module: node.source, form: 'export from' }
    case 'ImportExpression':
      return { module: node.source, form: 'import()' }
    case 'TSImportType':
      return { module: node.source, form: 'import type()' }
    case 'TSExternalModuleReference':
      return { module: node.expression, form: 'require' }
    case 'CallExpression':
      return isRequire(node.callee as Node)
        ? { module: (node.arguments as Node[])[0], form: 'require' }
        : undefined
    default:
      return undefined
  }
}

/** `require(…)`, and `createRequire(…)(…)` called on the spot. */
function isRequire(callee: Node): boolean {
  if (callee.type === 'Identifier') return callee.name === 'require'
  const inner = callee.type === 'CallExpression' ? (callee.callee as Node) : undefined
  return inner?.type === 'Identifier' && inner.name === 'createRequire'
}

function literal(node: unknown): string | undefined {
  const { type, value } = (node ?? {}) as Node
  return type === 'Literal' && typeof value === 'string' ? value : undefined
}

function visit(node: Node, see: (node: Node) => void): void {
  see(node)
  for (const member of Object.values(node))
    for (const child of Array.isArray(member) ? member : [member])
      if (child !== null && typeof child === 'object' && typeof (child as Node).type === 'string')
        visit(child as Node, see)
}
