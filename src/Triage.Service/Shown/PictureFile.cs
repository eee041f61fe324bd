namespace Triage.Service.Shown;

/// <summary>Whether a page may show a file as a picture, by what its name promises; what it really is, is looked at when it is served.</summary>
internal static class PictureFile
{
    private static readonly string[] Endings = [".jpg", ".jpeg", ".png", ".webp"];

    public static bool Is(string file) => Endings.Any(e => file.EndsWith(e, StringComparison.OrdinalIgnoreCase));
}
