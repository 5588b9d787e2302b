/**
 * True for a name by which only the machine itself gets to itself: loopback (RFC 6761, 6.3; RFC 1122, 3.2.1.3; RFC 4291,
 * 2.5.3), as the `hostname` of an address has it.
 *
 * Example: isOwnMachine('127.0.0.1') is true; isOwnMachine('192.168.1.20') is false.
 */
export const isOwnMachine = (hostname: string): boolean =>
  /^([\w-]+\.)*localhost$/.test(hostname) || /^127(\.\d{1,3}){3}$/.test(hostname) || hostname === '[::1]';
