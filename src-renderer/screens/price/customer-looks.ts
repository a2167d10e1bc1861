import { useSessionStorage } from '@mantine/hooks'

/** Whether the customer is looking at the screen: then nothing of the firm's own is on it. Kept until the window closes. */
export function useCustomerLooks() {
  const [looks, setLooks] = useSessionStorage({
    key: 'the-customer-looks',
    defaultValue: false,
    getInitialValueInEffect: false,
  })
  return { looks, setLooks }
}
