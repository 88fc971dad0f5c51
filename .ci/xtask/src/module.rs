//! WebAssembly modules as bytes (core specification 2.0, chapter 5): numbers, sections, and
//! instructions as far as they name functions.

/// Bytes with their count before them.
pub fn put(new: &mut Vec<u8>, bytes: &[u8]) {
    new.extend(number(bytes.len()));
    new.extend_from_slice(bytes);
}

/// A number as LEB128.
pub fn number(mut value: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    loop {
        let low = u8::try_from(value & 0x7f).unwrap_or_default();
        value >>= 7;
        if value == 0 {
            bytes.push(low);
            return bytes;
        }
        bytes.push(low | 0x80);
    }
}

/// Bytes that are read from the front.
pub struct Reader<'a>(pub &'a [u8]);

impl<'a> Reader<'a> {
    pub fn byte(&mut self) -> Option<u8> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*first)
    }

    pub fn number(&mut self) -> Option<usize> {
        let mut value = 0;
        for shift in (0..35).step_by(7) {
            let byte = self.byte()?;
            value |= usize::from(byte & 0x7f) << shift;
            if byte < 0x80 {
                return Some(value);
            }
        }
        None
    }

    pub fn bytes(&mut self) -> Option<&'a [u8]> {
        let count = self.number()?;
        let (bytes, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(bytes)
    }
}

/// The sections of a module by their numbers, in their order; `None` unless it is a module.
pub fn sections(module: &[u8]) -> Option<Vec<(u8, &[u8])>> {
    let mut reader = Reader(module.strip_prefix(b"\0asm\x01\0\0\0")?);
    let mut found = Vec::new();
    while !reader.0.is_empty() {
        found.push((reader.byte()?, reader.bytes()?));
    }
    Some(found)
}

/// A module of these sections, those without contents left out.
pub fn module(sections: &[(u8, Vec<u8>)]) -> Vec<u8> {
    let mut new = b"\0asm\x01\0\0\0".to_vec();
    for (id, section) in sections.iter().filter(|(_, section)| !section.is_empty()) {
        new.push(*id);
        put(&mut new, section);
    }
    new
}

/// Goes through the body of a function, and copies it with what `put_function` writes in place
/// of each `call` and `ref.func`, which it gets with the function's number. `None` where there is
/// an instruction that this program does not know.
pub fn rewrite(
    body: &[u8],
    put_function: &mut dyn FnMut(&mut Vec<u8>, u8, usize),
) -> Option<Vec<u8>> {
    let mut reader = Reader(body);
    for _ in 0..reader.number()? {
        reader.number()?;
        reader.byte()?;
    }
    let mut new = body[..body.len() - reader.0.len()].to_vec();
    while !reader.0.is_empty() {
        let start = reader.0;
        let instruction = reader.byte()?;
        if matches!(instruction, CALL | REF_FUNC) {
            let function = reader.number()?;
            put_function(&mut new, instruction, function);
            continue;
        }
        skip_immediates(&mut reader, instruction)?;
        new.extend_from_slice(&start[..start.len() - reader.0.len()]);
    }
    Some(new)
}

pub const CALL: u8 = 0x10;
pub const CALL_INDIRECT: u8 = 0x11;
pub const I32_CONST: u8 = 0x41;
pub const REF_FUNC: u8 = 0xd2;

/// What stands behind an instruction (5.4).
fn skip_immediates(reader: &mut Reader, instruction: u8) -> Option<()> {
    let numbers = |reader: &mut Reader, count: usize| {
        (0..count).try_for_each(|_| reader.number().map(|_| ()))
    };
    match instruction {
        0x00 | 0x01 | 0x05 | 0x0b | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => Some(()),
        // Blocks: a type of one byte, or a signed number.
        0x02..=0x04 | 0x41 | 0x42 => skip_leb(reader),
        0x0c | 0x0d | 0x20..=0x26 | 0x3f | 0x40 => numbers(reader, 1),
        0x0e => {
            let count = reader.number()?;
            numbers(reader, count + 1)
        }
        0x11 | 0x28..=0x3e => numbers(reader, 2),
        0x1c => {
            let count = reader.number()?;
            numbers(reader, count)
        }
        0x43 => take(reader, 4),
        0x44 => take(reader, 8),
        0xd0 => take(reader, 1),
        0xfc => match reader.number()? {
            0..=7 => Some(()),
            8 | 10 | 12 | 14 => numbers(reader, 2),
            9 | 11 | 13 | 15..=17 => numbers(reader, 1),
            _ => None,
        },
        _ => None,
    }
}

fn take(reader: &mut Reader, count: usize) -> Option<()> {
    reader.0 = reader.0.get(count..)?;
    Some(())
}

fn skip_leb(reader: &mut Reader) -> Option<()> {
    while 0x80 <= reader.byte()? {}
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_names_no_function_stays_as_it_is() {
        // Two locals; block, constants of each kind, a load, a branch table, memory.copy.
        let body = [
            1, 2, 0x7f, 0x02, 0x40, 0x41, 0xff, 0x7e, 0x42, 0x80, 0x01, 0x43, 1, 2, 3, 4, 0x44, 1,
            2, 3, 4, 5, 6, 7, 0x10, 0x28, 2, 0x10, 0x0e, 1, 0x10, 0, 0xfc, 10, 0, 0, 0x0b, 0x0b,
        ];
        let untouched = |_: &mut Vec<u8>, _, _| panic!("there is no call");
        assert_eq!(rewrite(&body, &mut { untouched }).unwrap(), body);
    }

    #[test]
    fn calls_are_told_and_replaced() {
        let mut told = Vec::new();
        let body = [0, CALL, 0x85, 0x01, REF_FUNC, 7, 0x0b];
        let new = rewrite(&body, &mut |new, instruction, function| {
            told.push((instruction, function));
            new.push(0x01);
        });
        assert_eq!(new.unwrap(), [0, 0x01, 0x01, 0x0b]);
        assert_eq!(told, [(CALL, 133), (REF_FUNC, 7)]);
        assert_eq!(rewrite(&[0, 0xfd, 0], &mut |_, _, _| {}), None, "not known");
    }

    #[test]
    fn numbers_come_back() {
        for value in [0, 1, 127, 128, 16_383, 16_384, 4_000_000_000] {
            assert_eq!(Reader(&number(value)).number(), Some(value));
        }
    }
}
