namespace Triage.Service.Phones;

/// <summary>Lets phones on the bench's network in, over HTTPS and by pairing only.</summary>
public sealed record PhoneOptions
{
    public const int UsualPort = 8138;

    /// <summary>Port of the encrypted side; 0 takes any free one.</summary>
    public int Port { get; init; } = UsualPort;
}
