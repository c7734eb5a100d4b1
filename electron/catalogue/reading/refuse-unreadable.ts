import { Refusal } from '../../requests/refusal.ts'

/** What the system says of a file that cannot be read, as a problem. */
export async function refusing<Value>(file: string, read: () => Promise<Value>): Promise<Value> {
  try {
    return await read()
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown)
      throw unreadable(file, wordSystemError(String(thrown.code)))
    throw thrown
  }
}

export function unreadable(file: string, why: string): Refusal {
  return new Refusal({ code: 'file-unreadable', file, why })
}

function wordSystemError(code: string): string {
  switch (code) {
    case 'ENOENT':
      return 'there is no such file or folder'
    case 'EACCES':
    case 'EPERM':
      return 'this account has no right to it'
    case 'EISDIR':
      return 'it is a folder'
    default:
      return code
  }
}
