namespace Triage.Workshop.Steps;

/// <summary>Whether a file may be a photo at all, told from its length and its beginning, so that the rest of a refused one need not be read.</summary>
public static class PhotoFile
{
    /// <summary>Bytes of the beginning that are enough.</summary>
    public const int Head = 12;

    /// <returns>Null when nothing speaks against it yet.</returns>
    public static Refusal? Refuses(long length, ReadOnlySpan<byte> head) =>
        length > Limits.Photo ? WorkshopRefusals.PhotoTooBig(length, Limits.Photo) : PhotoKind.Of(head) is null ? WorkshopRefusals.NoPhoto() : null;
}
