" Writes for each word of the buffer, line by line, the word and the group that colours its first letter.
let s:told = []
for s:number in range(1, line('$'))
  let s:at = 0
  while 1
    let [s:word, s:start, s:end] = matchstrpos(getline(s:number), '\S\+', s:at)
    if s:start < 0 | break | endif
    call add(s:told, s:word . "\t" . synIDattr(synID(s:number, s:start + 1, 1), 'name'))
    let s:at = s:end
  endwhile
endfor
call writefile(s:told, $RIG_TOLD)
quit!
