namespace Triage.Service.Phones;

/// <summary>A folder aside in the book that only its owner may read, and that git leaves alone: form keys, certificate, paired phones.</summary>
internal sealed class PrivateFolder
{
    private const UnixFileMode OwnerFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private PrivateFolder(DirectoryInfo place) => Place = place;

    public DirectoryInfo Place { get; }

    /// <param name="aside">The book's folder for what is not a note.</param>
    /// <exception cref="IOException">The folder cannot be made, as on a full disk.</exception>
    /// <exception cref="UnauthorizedAccessException">The book may only be read.</exception>
    public static PrivateFolder In(string aside)
    {
        var path = Path.Combine(aside, "keys");
        var folder = OperatingSystem.IsWindows() ? Directory.CreateDirectory(path) : Directory.CreateDirectory(path, OwnerFolder);
        File.WriteAllText(Path.Combine(path, ".gitignore"), "*\n");
        return new(folder);
    }

    public string PathOf(string name) => Path.Combine(Place.FullName, name);

    /// <summary>The file's bytes; null when there is none.</summary>
    public byte[]? Read(string name) => File.Exists(PathOf(name)) ? File.ReadAllBytes(PathOf(name)) : null;

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
