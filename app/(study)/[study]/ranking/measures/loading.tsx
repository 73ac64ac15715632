import { Working } from '../working';

export default function Loading() {
  return <Working title="Other measures" />;
}
