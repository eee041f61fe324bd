namespace Triage.Measurements.Markings;

/// <summary>Colours of bands; those that are digits stand for their own number.</summary>
public enum BandColour
{
    Black = 0,
    Brown = 1,
    Red = 2,
    Orange = 3,
    Yellow = 4,
    Green = 5,
    Blue = 6,
    Violet = 7,
    Grey = 8,
    White = 9,
    Gold = 10,
    Silver = 11,
    Pink = 12,
}
