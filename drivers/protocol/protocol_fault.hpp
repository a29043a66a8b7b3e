#pragma once

namespace holdfast::drivers {

/// Why bytes were not a reading; a closed list.
enum class ProtocolFault {
    lineTooLong,    ///< no end of line within the length this instrument can send
    notText,        ///< bytes outside printable ASCII
    wrongFields,    ///< more or fewer fields than this instrument sends
    notANumber,     ///< neither a number of the expected form nor a known status word
    numberTooLarge, ///< more digits than a count can hold
    finerThanStep,  ///< more decimals than the description's step: the description does not fit
    unknownUnit,    ///< a unit word that the description does not list
    otherUnit,      ///< a known unit, but not the one this instrument is described with
    unknownStatus,  ///< a status word that the description does not list
    missingSerial,  ///< the serial number's field is empty or lacks its prefix
};

} // namespace holdfast::drivers
