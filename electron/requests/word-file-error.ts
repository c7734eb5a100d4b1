/** Why a file could not be reached, in words that go after “cannot be read”. */
export function wordFileError(thrown: unknown): string {
  const { code, message } = thrown as NodeJS.ErrnoException
  switch (code) {
    case 'ENOENT':
      return 'there is no such file'
    case 'EISDIR':
      return 'it is a folder'
    case 'EACCES':
    case 'EPERM':
      return 'you may not'
    case 'ENOSPC':
      return 'the disk is full'
    default:
      return code ?? message
  }
}
