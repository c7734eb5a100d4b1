import { useMutation, useQueryClient } from '@tanstack/react-query'

/** Changes the stock, then has everything that shows it asked for anew. */
export function useStockChange<Input, Done>(
  change: (input: Input) => Promise<Done>,
  onDone: (done: Done, input: Input) => void = () => {},
) {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: change,
    networkMode: 'always',
    onSuccess: async (done, input) => {
      onDone(done, input)
      await queries.invalidateQueries({ queryKey: ['stock'] })
    },
  })
}
