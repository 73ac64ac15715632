import { Working } from '../working';

export default function Loading() {
  return <Working title="Spares on the shelf" />;
}
