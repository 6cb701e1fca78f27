import { EmptyFileSystemProvider, type FileSystemProvider } from 'langium';

/** A place without files, to build others on. Langium's own declares its methods without the parameters they are called with. */
export const NoFiles = EmptyFileSystemProvider as new () => FileSystemProvider;
