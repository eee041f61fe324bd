using Triage.Workshop.Books;

namespace Triage.Service.Owner;

/// <summary>A folder that only its owner may read. Aside in the book, where git leaves it alone: form keys, certificate, paired phones.</summary>
internal sealed class PrivateFolder
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private const UnixFileMode OwnerFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private PrivateFolder(DirectoryInfo place) => Place = place;

    public DirectoryInfo Place { get; }

    /// <param name="aside">The book's folder for what is not a note.</param>
    /// <exception cref="IOException">The folder cannot be made, as on a full disk.</exception>
    /// <exception cref="UnauthorizedAccessException">The book may only be read.</exception>
    public static PrivateFolder In(string aside)
    {
        var folder = At(Path.Combine(aside, "keys"));
        File.WriteAllText(folder.PathOf(".gitignore"), "*\n");
        return folder;
    }

    /// <inheritdoc cref="In"/>
    public static PrivateFolder At(string path) =>
        new(OperatingSystem.IsWindows() ? Directory.CreateDirectory(path) : Directory.CreateDirectory(path, OwnerFolder));

    /// <summary>Whether nobody but its owner could have read the file, or left a link in its place. On Windows the folder sees to that.</summary>
    public bool IsPrivate(string name) =>
        new FileInfo(PathOf(name)) is { Exists: true, LinkTarget: null } && (OperatingSystem.IsWindows() || (File.GetUnixFileMode(PathOf(name)) & ~OwnerFile) == 0);

    public string PathOf(string name) => Path.Combine(Place.FullName, name);

    /// <summary>The file's bytes; null when there is none.</summary>
    public byte[]? Read(string name) => File.Exists(PathOf(name)) ? File.ReadAllBytes(PathOf(name)) : null;

    /// <summary>One writer at a time, between processes too; the system lets go of it when its holder dies.</summary>
    /// <exception cref="IOException">Another holds it for seconds.</exception>
    public IDisposable Held() => FolderLock.Take(Place.FullName, Patience) ?? throw new IOException($"Another process holds {Place.FullName}.");

    /// <summary>Whole or not at all, and never readable by others, not even while it is written.</summary>
    public void Write(string name, ReadOnlySpan<byte> bytes)
    {
        var half = PathOf($".{name}.half");
        File.Delete(half);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnerFile;
        using (var file = new FileStream(half, options))
        {
            file.Write(bytes);
            file.Flush(flushToDisk: true);
        }

        File.Move(half, PathOf(name), overwrite: true);
    }
}
