namespace PileController.Control.Readings;

/// <summary>
/// How far a reading may be believed. The first group is what a port can tell; the second is what
/// validation adds by looking at the reading in its company.
/// </summary>
public enum ReadingQuality : byte
{
    /// <summary>No such probe is fitted.</summary>
    NotFitted = 0,

    /// <summary>Read and believed.</summary>
    Good = 1,

    /// <summary>The probe did not answer.</summary>
    NoAnswer = 2,

    /// <summary>It answered with a wrong checksum.</summary>
    BadChecksum = 3,

    /// <summary>The bus is shorted: all-zero data whose checksum happens to fit.</summary>
    Shorted = 4,

    /// <summary>Exactly the value a probe shows before its first conversion, and nothing near confirms it.</summary>
    PowerOnValue = 5,

    /// <summary>The answer came too late for this tick; the value is the one before.</summary>
    Late = 6,

    /// <summary>Outside the range a sound probe can report.</summary>
    OutOfRange = 16,

    /// <summary>Moved faster than the thing it measures can.</summary>
    TooFast = 17,

    /// <summary>Has not moved by one quantum for longer than a live probe can.</summary>
    Stuck = 18,

    /// <summary>Contradicts its neighbours.</summary>
    Disagrees = 19,

    /// <summary>Too old to act on.</summary>
    Stale = 20,
}
